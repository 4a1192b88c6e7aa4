import type { StepMoment } from '../../runner/moment.ts'
import type { RehearsedEvent } from '../kind.ts'
import { startOf } from '../arming.ts'
import { windowOf } from '../window.ts'
import { fieldsOf, lastTapOf, tapsOf } from './chart.ts'

const press: RehearsedEvent['data'] = (stamp) => ({ stamp })

/** Taps along at an even pace until the window is over, then enters what was tapped. */
export function rehearse(moment: StepMoment, random: () => number): RehearsedEvent | null {
  switch (moment.state) {
    case 'waiting':
      return { event: 'armed', after: 2500 + random() * 5000, data: press }
    case 'armed':
      return { event: 'started', after: 1200 + random() * 2500, data: press }
    case 'running':
      return within(moment, random)
    case 'ended':
      return { event: 'entered', after: 4000 + random() * 8000, data: () => counted(moment) }
    case 'entered':
      return { event: 'kept', after: 1500 + random() * 2500, data: press }
    default:
      return null
  }
}

function within(moment: StepMoment, random: () => number): RehearsedEvent {
  const window = 1000 * (windowOf(moment) ?? 0)
  const [lowest, highest] = fieldsOf(moment).range
  const aim = Math.max(1, Math.round(lowest + (highest - lowest) * 0.4))
  const gap = (window / aim) * (0.7 + random() * 0.6)
  const end = (startOf(moment)?.at ?? 0) + window
  const left = end - lastTapOf(moment)
  if (gap < left && tapsOf(moment) < highest) {
    return { event: 'tapped', after: gap, data: press }
  }
  return { event: 'window_ended', after: left, data: ({ at, clock }) => ({ at: Math.max(at, end), clock }) }
}

const counted = (moment: StepMoment): Record<string, unknown> => ({ count: tapsOf(moment), confirmed: true })
