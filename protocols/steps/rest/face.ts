import type { ClockTime, StepMoment } from '../../runner/moment.ts'
import { fromOf, leastOf } from './chart.ts'

/** What the screen draws of a rest. In state `waiting` its clock has to send `rest.began` first. */
export type RestFace = {
  /** Seconds. */
  readonly least: number
  /** From when the seconds count; null until the clock has taken the rest up. */
  readonly from: ClockTime | null
}

export const face = (moment: StepMoment): RestFace => ({
  least: leastOf(moment) ?? 0,
  from: fromOf(moment),
})
