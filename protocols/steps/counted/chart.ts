import { z } from 'zod'
import { type Data, type Effect, LEAVE, type StepChart } from '../../runner/chart-parts.ts'
import type { Stamp } from '../../runner/events.ts'
import type { StepMoment } from '../../runner/moment.ts'
import { isWithin, notPlausible } from '../../runner/plausible.ts'
import type { Reading } from '../../runner/view.ts'
import { arms, startOf } from '../arming.ts'
import { keyDead, move, pressed } from '../press.ts'
import { endsWith, isAfterWindow, notOfWindow, opensWith, tapped } from '../window.ts'
import { countUnit } from './columns.ts'
import type { CountedFields } from './keys.ts'

/** What was counted once the window was over; `confirmed` when it was asked for again. */
export const entered = z.strictObject({ count: z.int().min(0).max(1_000_000), confirmed: z.boolean() })
export const kept = pressed

export const fieldsOf = (moment: StepMoment) => moment.step.fields as unknown as CountedFields
/** When the last tap was, or the start where there was none. */
export const lastTapOf = (moment: StepMoment): number =>
  (moment.local.lastTap as number | undefined) ?? startOf(moment)?.at ?? 0
export const tapsOf = (moment: StepMoment): number => (moment.local.taps as number | undefined) ?? 0

const reading = (
  { step }: StepMoment,
  value: number,
  how: Pick<Reading, 'typed' | 'confirmed'>,
): Reading => ({ value, unit: countUnit(step), over: false, ...how, corrected: null })

/** Stamps of the presses after the end: kept, and not counted. */
const afterOf = ({ local }: StepMoment) => (local.after as readonly number[] | undefined) ?? []

/** The notes with one press more: by its stamp it counts, or comes after the end; when it is handled doesn't matter. */
function withOne(moment: StepMoment, stamp: Stamp): Data {
  if (isAfterWindow(moment, stamp)) return { ...moment.local, after: [...afterOf(moment), stamp.at] }
  return { ...moment.local, taps: tapsOf(moment) + 1, lastTap: Math.max(lastTapOf(moment), stamp.at) }
}

const taps = move(tapped, {
  to: 'running',
  main: true,
  refuses: (moment, { stamp }) => notOfWindow(moment, stamp),
  does: (moment, { stamp }) => ({ local: withOne(moment, stamp) }),
})

/** What a trial whose window is over holds by its notes: its start, its end, and what was pressed after it. */
const trialOf = (moment: StepMoment, local: Data, end: number): NonNullable<Effect['trial']> => ({
  stamps: [startOf(moment)?.at ?? end, end, ...afterOf({ ...moment, local })],
  readings: {
    tapped: reading(moment, tapsOf({ ...moment, local }), { typed: false, confirmed: false }),
  },
})

const ends = endsWith('ended', (moment, end) => ({
  local: { ...moment.local, end },
  trial: trialOf(moment, moment.local, end),
}))

/** A press that was on its way when the window ended: it counts if its stamp lies within. */
const tapsLate = move(tapped, {
  to: 'ended',
  main: true,
  refuses: (moment, { stamp }) => notOfWindow(moment, stamp),
  does: (moment, { stamp }) => {
    const local = withOne(moment, stamp)
    return { local, trial: trialOf(moment, local, local.end as number) }
  },
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
    armed: { on: { started: [opensWith(() => ({ taps: 0 }))] } },
    running: { flight: 'running', on: { tapped: [taps], window_ended: ends } },
    ended: { flight: 'held', on: { tapped: [tapsLate], entered: [enters] } },
    entered: { flight: 'held', on: { entered: [enters], kept: [keeps] } },
  },
}
