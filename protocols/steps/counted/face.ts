import type { ClockTime, StepMoment } from '../../runner/moment.ts'
import { startOf } from '../arming.ts'
import { windowOf } from '../window.ts'
import { fieldsOf, tapsOf } from './chart.ts'
import { countUnit } from './columns.ts'

/** What the screen draws of a count within a window. Times are seconds, stamps ms on the clock they name. */
export type CountedFace = {
  readonly start: { readonly by: 'said' | 'seen' | null; readonly text: string }
  readonly window: number | null
  /** True where it is told when half of it is over. */
  readonly halfTime: boolean
  readonly unit: string
  /** Counts outside it are refused as `out_of_range` until they are confirmed. */
  readonly plausible: readonly [number, number]
  /** Where the window runs from; null while it isn't open. */
  readonly startedAt: ClockTime | null
  readonly tapped: number
  readonly count: number | null
  readonly attempt: number
  readonly voidsLeft: number | null
  /** The key is dead for a second from here; null while presses after the end are kept. */
  readonly dead: ClockTime | null
}

export function face(moment: StepMoment): CountedFace {
  const fields = fieldsOf(moment)
  const count = moment.trial?.readings.count?.value
  const start = startOf(moment)
  return {
    start: { by: fields.start.by, text: moment.say(fields.start.text) },
    window: windowOf(moment),
    halfTime: fields['half-time'] ?? false,
    unit: countUnit(moment.step),
    plausible: fields.range,
    startedAt: moment.state === 'running' && start !== null ? { at: start.at, clock: start.clock } : null,
    tapped: tapsOf(moment),
    count: typeof count === 'number' ? count : null,
    attempt: moment.attempt,
    voidsLeft: moment.voidsLeft,
    dead: moment.state === 'ended' ? null : moment.dead,
  }
}
