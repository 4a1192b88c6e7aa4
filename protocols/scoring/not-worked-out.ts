import type { ScoreValue } from './result.ts'

export interface ByNeeds {
  readonly told: readonly ScoreValue[]
  /** Titles, each once. */
  readonly notWorkedOut: readonly string[]
}

/**
 * The shown scores, and apart from them those that had what they need nowhere in the test, such as the fastest of
 * several runs after a single one: that says nothing of the client. A hand that was refused, unable or absent is no
 * such case: its reason is told.
 */
export function apartByNeeds(scores: readonly ScoreValue[]): ByNeeds {
  const shown = scores.filter((score) => score.shown)
  const told = new Set(
    shown.filter(({ missing }) => missing?.code !== 'needs_not_met').map(({ score }) => score),
  )
  const isTold = ({ score }: ScoreValue): boolean => told.has(score)
  return {
    told: shown.filter(isTold),
    notWorkedOut: [...new Set(shown.filter((score) => !isTold(score)).map(({ title }) => title))],
  }
}
