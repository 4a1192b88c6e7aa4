import { z } from 'zod'
import { LEAVE, type StepChart } from '../../runner/chart-parts.ts'
import type { StepMoment } from '../../runner/moment.ts'
import { isWithin, notPlausible } from '../../runner/plausible.ts'
import { refuse } from '../../runner/refuse.ts'
import type { Reading } from '../../runner/view.ts'
import { keyDead, move, pressed } from '../press.ts'
import { arms, endsWith, isAfterWindow, notOfWindow, startOf, startsWith, tapped } from '../window.ts'
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

/** One more while the window is open. */
const taps = move(tapped, {
  to: 'running',
  main: true,
  refuses: (moment, { stamp }) =>
    notOfWindow(moment, stamp) ?? (isAfterWindow(moment, stamp) ? refuse('window_over') : null),
  does: (moment, { stamp }) => ({
    local: { ...moment.local, taps: tapsOf(moment) + 1, lastTap: stamp.at },
  }),
})

const ends = endsWith('ended', (moment, end) => ({
  local: moment.local,
  trial: {
    stamps: [startOf(moment)?.at ?? end, end],
    readings: { tapped: reading(moment, tapsOf(moment), { typed: false, confirmed: false }) },
  },
}))

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
    armed: { on: { started: [startsWith(() => ({ taps: 0 }))] } },
    running: { flight: 'running', on: { tapped: [taps], window_ended: ends } },
    ended: { flight: 'held', on: { entered: [enters] } },
    entered: { flight: 'held', on: { entered: [enters], kept: [keeps] } },
  },
}
