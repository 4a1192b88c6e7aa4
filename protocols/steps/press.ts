/** The laws of the one key, which all kinds of steps share. */
import { z } from 'zod'
import { type Data, LEAVE, type StepMove } from '../runner/chart-parts.ts'
import { type Stamp, stamp } from '../runner/events.ts'
import type { ClockTime, StepMoment } from '../runner/moment.ts'
import { refuse } from '../runner/refuse.ts'
import type { Refusal } from '../runner/view.ts'

/** For so long after a stop no press does anything; the first one after it only arms. */
const DEAD_MS = 1000
/** A second press of the same input within this time is its bounce. */
const BOUNCE_MS = 150

/** The data of an event that a press makes; null where it was made without one. */
export const pressed = z.strictObject({ stamp: stamp.nullable() })
/** The data of an event whose moment counts. */
export const stamped = z.strictObject({ stamp })
/** The data of an event that the clock outside makes. */
export const clocked = z.strictObject({ at: z.number().min(0), clock: z.string().min(1).max(64) })

/**
 * Why a press does nothing just after a stop on the same clock. One that is stamped long before the stop can't have
 * been meant for it (events may be handled out of their order, but not by a second): it is no bounce of the stop.
 */
export function keyDead(moment: StepMoment, press: Stamp | null): Refusal | null {
  const since = moment.dead
  if (press === null || since === null || press.clock !== since.clock) return null
  const passed = press.at - since.at
  return Math.abs(passed) < DEAD_MS ? refuse('key_dead', { leftMs: DEAD_MS - passed }) : null
}

/** Why a press that ends something is none: a bounce, another input, or earlier than what it ends. */
export function notTheEnd(start: Stamp, end: Stamp): Refusal | null {
  if (start.input !== end.input) return refuse('other_input', { started: start.input, stopped: end.input })
  if (start.clock !== end.clock) return null
  if (end.at < start.at) return refuse('stop_before_start')
  return end.at - start.at < BOUNCE_MS ? refuse('bounce', { ms: end.at - start.at }) : null
}

/** Finer than any clock: sums of stamps differ by so much in their last digits. */
const SAME_MS = 0.001

/** ms that are left until so many seconds have passed since `from`, by the stamps of one clock; null: they have. */
export function stillLeft(from: ClockTime, now: ClockTime, seconds: number): number | null {
  const left = 1000 * seconds - (now.at - from.at)
  return left > SAME_MS ? left : null
}

export const clockTime = (of: ClockTime): ClockTime => ({ at: of.at, clock: of.clock })

interface TypedMove<Of> extends Omit<StepMove, 'when' | 'refuses' | 'does'> {
  readonly when?: (moment: StepMoment, data: Of) => boolean
  readonly refuses?: (moment: StepMoment, data: Of) => Refusal | null
  readonly does?: (moment: StepMoment, data: Of) => ReturnType<NonNullable<StepMove['does']>>
}

/** A move whose event's data have been read by `schema`; the runner never calls it with others. */
export function move<Schema extends z.ZodObject>(
  _schema: Schema,
  parts: TypedMove<z.infer<Schema>>,
): StepMove {
  const { when, refuses, does, ...rest } = parts
  const as = (data: Data) => data as z.infer<Schema>
  return {
    ...rest,
    ...(when && { when: (moment: StepMoment, data: Data) => when(moment, as(data)) }),
    ...(refuses && { refuses: (moment: StepMoment, data: Data) => refuses(moment, as(data)) }),
    ...(does && { does: (moment: StepMoment, data: Data) => does(moment, as(data)) }),
  }
}

/** The one state of a step that is shown or done and then left by the main key. */
export const onceDoneChart = (event: string) => ({
  initial: 'waiting',
  states: {
    waiting: {
      on: {
        [event]: [
          move(pressed, { to: LEAVE, main: true, refuses: (moment, data) => keyDead(moment, data.stamp) }),
        ],
      },
    },
  },
})
