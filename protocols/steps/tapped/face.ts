import type { ClockTime, StepMoment } from '../../runner/moment.ts'
import { startOf } from '../arming.ts'
import { windowOf } from '../window.ts'
import { bounceOf, cueOf, pressesOf, restsSince, SETTLING } from './chart.ts'
import type { TappedFields } from './keys.ts'

/** What the screen draws of taps within a window. Times are seconds, stamps ms on the clock they name. */
export type TappedFace = {
  /** What opens the window; null: the first press. */
  readonly start: { readonly by: 'said' | 'seen'; readonly text: string } | null
  readonly window: number | null
  /** True where it is told when half of it is over. */
  readonly halfTime: boolean
  /** Where the window runs from; null while it isn't open. */
  readonly startedAt: ClockTime | null
  /** Since when the hand rests after the window; null before, and once it has come to rest. */
  readonly restsSince: ClockTime | null
  /** Seconds that the hand is given to come to rest. */
  readonly settling: number
  /** ms after a tap in which another one is a bounce of the key. */
  readonly bounceMs: number
  readonly count: number
  readonly attempt: number
  readonly voidsLeft: number | null
  /** The key is dead for a second from here; null while presses after the end are kept. */
  readonly dead: ClockTime | null
}

export function face(moment: StepMoment): TappedFace {
  const { state } = moment
  const start = startOf(moment)
  return {
    start: cueOf(moment),
    window: windowOf(moment),
    halfTime: (moment.step.fields as unknown as TappedFields)['half-time'] ?? false,
    startedAt: state === 'running' && start !== null ? { at: start.at, clock: start.clock } : null,
    restsSince: state === 'over' ? restsSince(moment) : null,
    settling: SETTLING,
    bounceMs: bounceOf(moment),
    count: pressesOf(moment).length,
    attempt: moment.attempt,
    voidsLeft: moment.voidsLeft,
    dead: state === 'over' ? null : moment.dead,
  }
}
