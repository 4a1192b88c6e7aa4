import type { StepMoment } from '../../runner/moment.ts'
import type { TellingOutcome } from '../kind.ts'
import { press } from '../telling.ts'
import { face } from './face.ts'

/** Each grade that may be given here, the best first. */
export function outcomes(moment: StepMoment): readonly TellingOutcome[] {
  return face(moment)
    .grades.filter(({ above }) => !above)
    .map(({ grade }) => grade)
    .sort((a, b) => b - a)
    .map((grade) => ({
      label: String(grade),
      events: [{ event: 'graded', after: 2000, data: () => ({ grade, reason: null }) }, press('kept')],
    }))
}
