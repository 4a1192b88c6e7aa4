import type { ClockTime, StepMoment } from '../../runner/moment.ts'
import { allowedOf, highestOf, scaleOf } from './grades.ts'

/** What the screen draws of a rating. */
export type RatedFace = {
  /** The grades that may be given here, lowest first; `above` is refused without a reason. */
  readonly grades: readonly { readonly grade: number; readonly text: string; readonly above: boolean }[]
  /** The highest grade that what was measured allows; null where there is none or it can't be worked out. */
  readonly highest: number | null
  /** True where the file has a highest grade that can't be worked out here. */
  readonly highestUnknown: boolean
  readonly grade: number | null
  readonly attempt: number
  readonly voidsLeft: number | null
  /** The key is dead for a second from here. */
  readonly dead: ClockTime | null
}

export function face(moment: StepMoment): RatedFace {
  const allowed = allowedOf(moment) ?? []
  const highest = highestOf(moment)
  const grade = moment.trial?.readings.grade?.value
  return {
    grades: scaleOf(moment)
      .filter((each) => allowed.includes(each.grade))
      .map((each) => ({ ...each, above: typeof highest === 'number' && each.grade > highest })),
    highest: typeof highest === 'number' ? highest : null,
    highestUnknown: highest === 'unknown',
    grade: typeof grade === 'number' ? grade : null,
    attempt: moment.attempt,
    voidsLeft: moment.voidsLeft,
    dead: moment.dead,
  }
}
