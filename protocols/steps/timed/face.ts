import type { ClockTime, StepMoment } from '../../runner/moment.ts'
import { startOf } from '../arming.ts'
import { limitOf, plausible } from './chart.ts'
import type { TimedFields } from './keys.ts'
import { mostOf, toldOf } from './reached.ts'
import { splitsIn } from './splits.ts'

/** What the screen draws of a timed trial. Times are seconds, stamps ms on the clock they name. */
export type TimedFace = {
  readonly start: { readonly by: 'said' | 'seen' | null; readonly text: string }
  readonly stop: { readonly by: 'said' | 'seen' | null; readonly text: string }
  readonly limit: number | null
  /** True where it is told when half of it is over. */
  readonly halfTime: boolean
  /** Times typed outside it are refused as `out_of_range` until they are confirmed. */
  readonly plausible: readonly [number, number]
  /** Where the clock runs from; null while it doesn't run. */
  readonly startedAt: ClockTime | null
  readonly time: number | null
  readonly outcome: 'done' | 'limit' | null
  readonly typed: boolean
  /** What is asked for at the limit, with what was told of it so far. */
  readonly reached: readonly {
    readonly name: string
    readonly text: string | null
    readonly most: number | null
    readonly count: number | null
  }[]
  /** Moments to stamp on the way, with the seconds that they took. */
  readonly splits: readonly {
    readonly name: string
    readonly text: string
    readonly seconds: number | null
  }[]
  /** Seconds that happenings have added; null where the protocol has none that add. */
  readonly added: number | null
  readonly attempt: number
  readonly voidsLeft: number | null
  /** The key is dead for a second from here. */
  readonly dead: ClockTime | null
}

export function face(moment: StepMoment): TimedFace {
  const fields = moment.step.fields as unknown as TimedFields
  const reading = moment.trial?.readings.time
  const outcome = moment.trial?.outcome ?? null
  const start = startOf(moment)
  return {
    start: { by: fields.start.by, text: moment.say(fields.start.text) },
    stop: { by: fields.stop.by, text: moment.say(fields.stop.text) },
    limit: limitOf(moment),
    halfTime: fields['half-time'] ?? false,
    plausible: plausible(moment),
    startedAt: moment.state === 'running' && start !== null ? { at: start.at, clock: start.clock } : null,
    time: typeof reading?.value === 'number' ? reading.value : null,
    outcome: outcome === 'done' || outcome === 'limit' ? outcome : null,
    typed: reading?.typed ?? false,
    reached: Object.entries(fields.reached ?? {}).map(([name, { text }]) => ({
      name,
      text: text === undefined ? null : moment.say(text),
      most: mostOf(moment, name),
      count: toldOf(moment, name),
    })),
    splits: splitsIn(moment),
    added: moment.added,
    attempt: moment.attempt,
    voidsLeft: moment.voidsLeft,
    dead: moment.dead,
  }
}
