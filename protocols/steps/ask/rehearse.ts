import type { StepMoment } from '../../runner/moment.ts'
import type { RehearsedEvent } from '../kind.ts'
import { fieldsOf } from './chart.ts'

/** Any option, a number in the middle of what is plausible, or a short word. */
export function rehearse(moment: StepMoment, random: () => number): RehearsedEvent | null {
  if (moment.state === 'answered') {
    return { event: 'kept', after: 1000 + random() * 2000, data: (stamp) => ({ stamp }) }
  }
  const answer = madeUp(moment, random)
  return { event: 'answered', after: 3000 + random() * 5000, data: () => ({ answer, confirmed: false }) }
}

function madeUp(moment: StepMoment, random: () => number): string | number {
  const { options, range, decimals } = fieldsOf(moment)
  const ids = Object.keys(options ?? {})
  const picked = ids[Math.floor(random() * ids.length)]
  if (picked !== undefined) return picked
  if (range === undefined) return '-'
  const [lowest, highest] = range
  return Number((lowest + (highest - lowest) * (0.3 + random() * 0.4)).toFixed(decimals ?? 0))
}
