import type { Trial } from '../runner/view.ts'
import type { ScoreValue } from './result.ts'

/** How a value came about, where every reader has to know it. */
const MARKS = ['typed', 'confirmed'] as const
export type Mark = (typeof MARKS)[number]

const HOLDS: Readonly<Record<Mark, (trial: Trial) => boolean>> = {
  // A time from another watch. Counts and readings are always typed: that is no news of them.
  typed: ({ input }) => input === 'typed',
  confirmed: ({ readings }) => Object.values(readings).some(({ confirmed }) => confirmed),
}

/** What holds of at least one of the trials that a score rests on. */
export function marksOf(score: ScoreValue, trials: readonly Trial[]): readonly Mark[] {
  const rested = trials.filter(({ id }) => score.trials.includes(id))
  return score.value === null ? [] : MARKS.filter((mark) => rested.some(HOLDS[mark]))
}
