import { LEAVE, type StepChart } from '../../runner/chart-parts.ts'
import type { Stamp } from '../../runner/events.ts'
import type { ClockTime, StepMoment } from '../../runner/moment.ts'
import { refuse } from '../../runner/refuse.ts'
import type { Reading, Refusal } from '../../runner/view.ts'
import { arms, startOf } from '../arming.ts'
import { clocked, keyDead, move, pressed, stillLeft } from '../press.ts'
import { endsWith, isAfterWindow, notOfWindow, opensWith, tapped } from '../window.ts'
import type { TappedFields } from './keys.ts'

/** The hand has come to rest after the window: from here the main key keeps. */
export const settled = clocked
export const kept = pressed

/** Seconds without a press after the window until the next one is the examiner's: nobody stops on the instant. */
export const SETTLING = 1

const fieldsOf = (moment: StepMoment) => moment.step.fields as unknown as TappedFields

/** What opens the window here: words or something seen; null where it is the first press. */
export function cueOf(moment: StepMoment): { readonly by: 'said' | 'seen'; readonly text: string } | null {
  const { start } = fieldsOf(moment)
  if (start === undefined) return null
  const text = moment.say(start.text)
  if (start.by !== null) return { by: start.by, text }
  return text === 'first_press' ? null : { by: 'said', text }
}

/** Stamps of the presses that count, in ms on the clock of the start. */
export const pressesOf = ({ local }: StepMoment) => (local.presses as readonly number[] | undefined) ?? []
/** Stamps of the presses after the end: kept, and not counted. */
const afterOf = ({ local }: StepMoment) => (local.after as readonly number[] | undefined) ?? []
const endOf = ({ local }: StepMoment) => (local.end as ClockTime | undefined) ?? null

const lastOf = (moment: StepMoment): number | null =>
  afterOf(moment).at(-1) ?? pressesOf(moment).at(-1) ?? null

/** Since when the hand rests: the end of the window, or the last press after it; null while the window is open. */
export function restsSince(moment: StepMoment): ClockTime | null {
  const end = endOf(moment)
  return end && { at: Math.max(end.at, afterOf(moment).at(-1) ?? end.at), clock: end.clock }
}

/** ms after a tap in which another one is a bounce of the key. */
export function bounceOf(moment: StepMoment): number {
  const { bounce } = fieldsOf(moment)
  return 1000 * ((bounce && moment.quantity(bounce, 's')) ?? 0)
}

function refuses(moment: StepMoment, { stamp }: { readonly stamp: Stamp }): Refusal | null {
  const misplaced = notOfWindow(moment, stamp)
  const last = lastOf(moment)
  if (misplaced !== null || last === null) return misplaced
  if (stamp.at <= last) return refuse('out_of_order')
  return stamp.at - last < bounceOf(moment) ? refuse('bounce', { ms: stamp.at - last }) : null
}

const counted = (value: number): Reading => ({
  value,
  unit: '{count}',
  over: false,
  typed: false,
  confirmed: false,
  corrected: null,
})

/** The trial as its presses make it: its stamps are the start and every press, so that no interval is lost. */
function trialOf(moment: StepMoment, presses: readonly number[], after: readonly number[]) {
  const start = startOf(moment)?.at ?? 0
  return {
    stamps: [start, ...presses.filter((at) => at !== start), ...after],
    readings: { count: counted(presses.length), after: counted(after.length) },
  }
}

/** The presses with one more, by its stamp: one that is handled late may still count. */
function withOne(moment: StepMoment, { at }: Stamp, isLate: boolean) {
  return {
    presses: isLate ? pressesOf(moment) : [...pressesOf(moment), at],
    after: isLate ? [...afterOf(moment), at] : afterOf(moment),
  }
}

const taps = move(tapped, {
  to: 'running',
  main: true,
  refuses,
  does: (moment, { stamp }) => ({
    local: { ...moment.local, ...withOne(moment, stamp, isAfterWindow(moment, stamp)) },
  }),
})

const ends = endsWith('over', (moment, at) => ({
  local: { ...moment.local, end: { at, clock: startOf(moment)?.clock ?? '' } },
  trial: trialOf(moment, pressesOf(moment), afterOf(moment)),
}))

const tapsLate = move(tapped, {
  to: 'over',
  main: true,
  refuses,
  does: (moment, { stamp }) => {
    const { presses, after } = withOne(moment, stamp, isAfterWindow(moment, stamp))
    return { local: { ...moment.local, presses, after }, trial: trialOf(moment, presses, after) }
  },
})

const settles = move(settled, {
  to: 'ended',
  automatic: true,
  refuses: (moment, now) => {
    const since = restsSince(moment)
    const left = since?.clock === now.clock ? stillLeft(since, now, SETTLING) : null
    return left === null ? null : refuse('key_dead', { leftMs: left })
  },
  does: (moment) => ({ local: moment.local }),
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
    armed: {
      on: {
        started: [
          opensWith((moment, { at }) => ({ presses: cueOf(moment) === null ? [at] : [], after: [] })),
        ],
      },
    },
    running: { flight: 'running', on: { tapped: [taps], window_ended: ends } },
    over: { flight: 'held', on: { tapped: [tapsLate], settled: [settles] } },
    ended: { flight: 'held', on: { kept: [keeps] } },
  },
}
