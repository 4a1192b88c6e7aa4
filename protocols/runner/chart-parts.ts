/** What a kind of step or section contributes to the chart. */
export interface StepChart {
  readonly initial: string
}
export interface SectionChart {
  readonly initial: string
}
