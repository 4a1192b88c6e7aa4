import { z } from 'zod'
import { type Effect, LEAVE, type StepChart } from '../../runner/chart-parts.ts'
import type { StepMoment } from '../../runner/moment.ts'
import { isWithin, notPlausible } from '../../runner/plausible.ts'
import { refuse } from '../../runner/refuse.ts'
import type { Refusal } from '../../runner/view.ts'
import { decimalsOf } from '../decimals.ts'
import { clockTime, keyDead, move, pressed } from '../press.ts'
import type { MeasuredFields } from './keys.ts'

/** What the instrument showed, in the step's unit; `confirmed` when it was asked for again. */
export const entered = z.strictObject({ value: z.number(), confirmed: z.boolean() })
type Entered = z.infer<typeof entered>
export const kept = pressed

export const fieldsOf = (moment: StepMoment) => moment.step.fields as unknown as MeasuredFields

function refuses(moment: StepMoment, { value, confirmed }: Entered): Refusal | null {
  const { decimals, range } = fieldsOf(moment)
  if (decimals !== undefined && decimalsOf(value) > decimals) return refuse('too_many_decimals', { decimals })
  return notPlausible(value, range, confirmed)
}

function does(moment: StepMoment, { value }: Entered): Effect {
  const { unit, range } = fieldsOf(moment)
  const confirmed = !isWithin(value, range)
  const readings = { value: { value, unit, over: false, typed: true, confirmed, corrected: null } }
  return {
    ...(moment.trial === null && { begins: { input: null, stamps: [] } }),
    trial: { outcome: 'done', readings },
  }
}

const enters = move(entered, { to: 'entered', refuses, does })

const keeps = move(kept, {
  to: LEAVE,
  main: true,
  refuses: (moment, { stamp }) => keyDead(moment, stamp),
  does: (_moment, { stamp }) => (stamp === null ? {} : { ends: clockTime(stamp) }),
})

export const chart: StepChart = {
  initial: 'waiting',
  states: {
    waiting: { voidable: true, on: { entered: [enters] } },
    entered: { flight: 'held', on: { entered: [enters], kept: [keeps] } },
  },
}
