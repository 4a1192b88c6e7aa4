import type { StepMoment } from '../../runner/moment.ts'
import type { RehearsedEvent } from '../kind.ts'
import { startOf } from '../arming.ts'
import { windowOf } from '../window.ts'
import { pressesOf, restsSince, SETTLING } from './chart.ts'

const press: RehearsedEvent['data'] = (stamp) => ({ stamp })

/** Taps at four to six a second until the window is over. */
export function rehearse(moment: StepMoment, random: () => number): RehearsedEvent | null {
  switch (moment.state) {
    case 'waiting':
      return { event: 'armed', after: 2500 + random() * 5000, data: press }
    case 'armed':
      return { event: 'started', after: 1200 + random() * 2500, data: press }
    case 'running':
      return within(moment, random)
    case 'over': {
      const end = (restsSince(moment)?.at ?? 0) + 1000 * SETTLING
      return {
        event: 'settled',
        after: 1000 * SETTLING,
        data: ({ at, clock }) => ({ at: Math.max(at, end), clock }),
      }
    }
    case 'ended':
      return { event: 'kept', after: 1500 + random() * 2500, data: press }
    default:
      return null
  }
}

function within(moment: StepMoment, random: () => number): RehearsedEvent {
  const start = startOf(moment)?.at ?? 0
  const end = start + 1000 * (windowOf(moment) ?? 0)
  const left = end - (pressesOf(moment).at(-1) ?? start)
  const gap = 165 + random() * 85
  if (gap < left) return { event: 'tapped', after: gap, data: press }
  return { event: 'window_ended', after: left, data: ({ at, clock }) => ({ at: Math.max(at, end), clock }) }
}
