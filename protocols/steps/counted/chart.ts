import { z } from 'zod'
import { AGAIN, LEAVE, type StepChart } from '../../runner/chart-parts.ts'
import type { Stamp } from '../../runner/events.ts'
import type { StepMoment } from '../../runner/moment.ts'
import { isWithin, notPlausible } from '../../runner/plausible.ts'
import { refuse } from '../../runner/refuse.ts'
import type { Reading } from '../../runner/view.ts'
import { clocked, clockTime, keyDead, move, pressed, stamped, stillLeft } from '../press.ts'
import { countUnit } from './columns.ts'
import type { CountedFields } from './keys.ts'

/** What was counted once the window was over; `confirmed` when it was asked for again. */
export const entered = z.strictObject({ count: z.int().min(0).max(1_000_000), confirmed: z.boolean() })
export const armed = stamped
export const started = stamped
export const tapped = stamped
export const windowEnded = clocked
export const kept = pressed

export const fieldsOf = (moment: StepMoment) => moment.step.fields as unknown as CountedFields
/** The window in seconds; null where its expression has no value here. */
export const windowOf = (moment: StepMoment): number | null => moment.quantity(fieldsOf(moment).window, 's')
export const startOf = (moment: StepMoment): Stamp | null => (moment.local.start as Stamp | undefined) ?? null
/** When the last tap was, or the start where there was none. */
export const lastTapOf = (moment: StepMoment): number =>
  (moment.local.lastTap as number | undefined) ?? startOf(moment)?.at ?? 0
export const tapsOf = (moment: StepMoment): number => (moment.local.taps as number | undefined) ?? 0

const reading = (
  { step }: StepMoment,
  value: number,
  how: Pick<Reading, 'typed' | 'confirmed'>,
): Reading => ({ value, unit: countUnit(step), over: false, ...how, corrected: null })

const arms = move(armed, {
  to: 'armed',
  main: true,
  refuses: (moment, { stamp }) => keyDead(moment, stamp),
  does: (_moment, { stamp }) => ({ local: { armed: stamp } }),
})

const starts = move(started, {
  to: 'running',
  main: true,
  refuses: (moment, { stamp }) => {
    const before = moment.local.armed as Stamp
    if (windowOf(moment) === null) return refuse('no_window')
    return stamp.clock === before.clock && stamp.at <= before.at ? refuse('out_of_order') : null
  },
  does: (_moment, { stamp }) => ({
    local: { start: stamp, taps: 0 },
    begins: { input: stamp.input, stamps: [stamp.at] },
  }),
})

/** One more while the window is open; by its stamp, not by when it was handled. */
const taps = move(tapped, {
  to: 'running',
  main: true,
  refuses: (moment, { stamp }) => {
    const start = startOf(moment)
    if (start === null || stamp.clock !== start.clock) return refuse('other_clock')
    if (stamp.at <= start.at) return refuse('out_of_order')
    return stamp.at - start.at > 1000 * (windowOf(moment) ?? 0) ? refuse('window_over') : null
  },
  does: (moment, { stamp }) => ({
    local: { ...moment.local, taps: tapsOf(moment) + 1, lastTap: stamp.at },
  }),
})

const breaks = move(windowEnded, {
  to: AGAIN,
  automatic: true,
  when: (moment, end) => startOf(moment)?.clock !== end.clock,
  does: (_moment, end) => ({
    void: { happening: null, cause: 'clock_changed' },
    dead: clockTime(end),
    ends: clockTime(end),
  }),
})

const ends = move(windowEnded, {
  to: 'ended',
  automatic: true,
  refuses: (moment, end) => {
    const left = stillLeft(startOf(moment) ?? end, end, windowOf(moment) ?? 0)
    return left === null ? null : refuse('window_not_over', { leftMs: left })
  },
  does: (moment, end) => ({
    local: moment.local,
    trial: {
      stamps: [startOf(moment)?.at ?? end.at, end.at],
      readings: { tapped: reading(moment, tapsOf(moment), { typed: false, confirmed: false }) },
    },
    dead: clockTime(end),
    ends: clockTime(end),
  }),
})

const enters = move(entered, {
  to: 'entered',
  refuses: (moment, { count, confirmed }) => notPlausible(count, fieldsOf(moment).range, confirmed),
  does: (moment, { count }) => {
    const confirmed = !isWithin(count, fieldsOf(moment).range)
    const counted = reading(moment, count, { typed: true, confirmed })
    return { local: moment.local, trial: { readings: { ...moment.trial?.readings, count: counted } } }
  },
})

const keeps = move(kept, {
  to: LEAVE,
  main: true,
  refuses: (moment, { stamp }) => keyDead(moment, stamp),
})

export const chart: StepChart = {
  initial: 'waiting',
  states: {
    waiting: { on: { armed: [arms] } },
    armed: { on: { started: [starts] } },
    running: { flight: 'running', on: { tapped: [taps], window_ended: [breaks, ends] } },
    ended: { flight: 'held', on: { entered: [enters] } },
    entered: { flight: 'held', on: { entered: [enters], kept: [keeps] } },
  },
}
