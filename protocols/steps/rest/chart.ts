import { z } from 'zod'
import { LEAVE, type StepChart } from '../../runner/chart-parts.ts'
import type { ClockTime, StepMoment } from '../../runner/moment.ts'
import { clocked, clockTime, move, stillLeft } from '../press.ts'
import { refuse } from '../../runner/refuse.ts'
import type { RestFields } from './keys.ts'

/** The clock outside took up the rest; after a restart it does so anew, on its new clock. */
export const began = clocked
export const over = clocked
export const cut = z.strictObject({ reason: z.string().trim().min(1).max(1000) })

const fieldsOf = (moment: StepMoment) => moment.step.fields as unknown as RestFields

/** The least rest in seconds; null where its expression has no value here, and then there is none. */
export const leastOf = (moment: StepMoment): number | null => moment.quantity(fieldsOf(moment).least, 's')
export const fromOf = (moment: StepMoment): ClockTime | null =>
  (moment.local.from as ClockTime | undefined) ?? null

/** Nothing to rest from: no such trial yet, or no time asked for. */
function idle(moment: StepMoment): boolean {
  const { since } = fieldsOf(moment)
  return (leastOf(moment) ?? 0) <= 0 || (since !== undefined && moment.lastEnd(since) === null)
}

/** A rest counts from the trial before it, unless that ended on a clock that is gone. */
function countsFrom(moment: StepMoment, now: ClockTime): ClockTime {
  const { since } = fieldsOf(moment)
  const end = since === undefined ? null : moment.lastEnd(since)
  return clockTime(end?.clock === now.clock ? end : now)
}

const begins = move(began, {
  to: 'resting',
  automatic: true,
  does: (moment, now) => ({ local: { from: countsFrom(moment, now) } }),
})

const ends = move(over, {
  to: LEAVE,
  automatic: true,
  refuses: (moment, now) => {
    const from = fromOf(moment)
    if (from === null || from.clock !== now.clock) return refuse('other_clock')
    const left = stillLeft(from, now, leastOf(moment) ?? 0)
    return left === null ? null : refuse('rest_not_over', { leftMs: left })
  },
})

const cuts = move(cut, {
  to: LEAVE,
  does: (moment, { reason }) => ({
    deviates: [{ code: 'rest_cut', what: moment.step.name, reason, norms: 'caution' }],
  }),
})

export const chart: StepChart = {
  initial: 'waiting',
  states: {
    waiting: { on: { began: [begins], cut: [cuts] } },
    resting: { on: { over: [ends], cut: [cuts] } },
  },
  idle,
}
