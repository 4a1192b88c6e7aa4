import type { StepMoment } from '../../runner/moment.ts'
import type { RehearsedEvent } from '../kind.ts'
import { face } from './face.ts'

/** Any grade that may be given here; nothing where none may. */
export function rehearse(moment: StepMoment, random: () => number): RehearsedEvent | null {
  if (moment.state === 'graded') {
    return { event: 'kept', after: 1000 + random() * 2000, data: (stamp) => ({ stamp }) }
  }
  const open = face(moment).grades.filter(({ above }) => !above)
  const grade = open[Math.floor(random() * open.length)]?.grade
  if (grade === undefined) return null
  return { event: 'graded', after: 2500 + random() * 5000, data: () => ({ grade, reason: null }) }
}
