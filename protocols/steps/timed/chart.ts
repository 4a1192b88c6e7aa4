import { z } from 'zod'
import { AGAIN, type Effect, LEAVE, type StepChart } from '../../runner/chart-parts.ts'
import type { ClockTime, StepMoment } from '../../runner/moment.ts'
import { isWithin, notPlausible, type Range } from '../../runner/plausible.ts'
import { refuse } from '../../runner/refuse.ts'
import type { Reading, Refusal } from '../../runner/view.ts'
import { arms, startOf, startsWith } from '../arming.ts'
import { clocked, clockTime, keyDead, move, notTheEnd, pressed, stillLeft, stamped } from '../press.ts'
import type { TimedFields } from './keys.ts'
import { namesReached, tellsReached } from './reached.ts'
import { beforeSplit, splits } from './splits.ts'

/** A time read from a watch, in seconds; `confirmed` when it was asked for again. */
export const typed = z.strictObject({ seconds: z.number().min(0).max(86_400), confirmed: z.boolean() })
export const stopped = stamped
export const kept = pressed
export const limitReached = clocked

/** Times that nobody confirms again unless the file says otherwise: in seconds, up to the limit where there is one. */
const SHORTEST = 0.3
const LONGEST = 1800

const fieldsOf = (moment: StepMoment) => moment.step.fields as unknown as TimedFields

/** The limit in seconds; null where there is none. */
export function limitOf(moment: StepMoment): number | null {
  const { limit } = fieldsOf(moment)
  return limit === undefined ? null : moment.quantity(limit, 's')
}

export function plausible(moment: StepMoment): Range {
  return fieldsOf(moment).range ?? [SHORTEST, limitOf(moment) ?? LONGEST]
}

/** Seconds between two stamps of one clock. */
const seconds = (from: ClockTime, to: ClockTime): number => (to.at - from.at) / 1000

const inSeconds = (
  value: number | null,
  { typed: byHand, confirmed }: Pick<Reading, 'typed' | 'confirmed'>,
): Reading => ({ value, unit: 's', over: false, typed: byHand, confirmed, corrected: null })

function overLimit(moment: StepMoment, time: number): boolean {
  const limit = limitOf(moment)
  return limit !== null && time >= limit
}

const starts = startsWith({})

function stop(moment: StepMoment, end: ClockTime, atLimit: boolean): Effect {
  const start = startOf(moment)
  if (start === null) return {}
  const time = seconds(start, end)
  const limited = atLimit || overLimit(moment, time)
  return {
    local: { start, stop: clockTime(end) },
    trial: {
      stamps: [...(moment.trial?.stamps ?? [start.at]), end.at],
      outcome: limited ? 'limit' : 'done',
      readings: {
        ...moment.trial?.readings,
        time: inSeconds(limited ? null : time, { typed: false, confirmed: false }),
      },
    },
    dead: clockTime(end),
    ends: clockTime(end),
  }
}

const otherClock = (moment: StepMoment, end: ClockTime): boolean => startOf(moment)?.clock !== end.clock

/** A time across two clocks is none: the trial is void, whatever the stamps say. */
const breaks = move(stopped, {
  to: AGAIN,
  main: true,
  when: (moment, { stamp }) => otherClock(moment, stamp),
  does: (_moment, { stamp }) => ({
    void: { happening: null, cause: 'clock_changed' },
    dead: clockTime(stamp),
    ends: clockTime(stamp),
  }),
})

/** At the limit it is asked how far it went, where the file wants to know. */
const asksAtLimit = (moment: StepMoment, time: number): boolean =>
  namesReached(moment).length > 0 && overLimit(moment, time)

const secondsTo = (moment: StepMoment, end: ClockTime): number => seconds(startOf(moment) ?? end, end)

const stops = (to: string, asks: boolean) =>
  move(stopped, {
    to,
    main: true,
    when: (moment, { stamp }) => asksAtLimit(moment, secondsTo(moment, stamp)) === asks,
    refuses: (moment, { stamp }) => {
      const start = startOf(moment)
      return start === null ? null : (notTheEnd(start, stamp) ?? beforeSplit(moment, stamp))
    },
    does: (moment, { stamp }) => stop(moment, stamp, false),
  })

function tooEarly(moment: StepMoment, end: ClockTime): Refusal | null {
  const start = startOf(moment)
  const limit = limitOf(moment)
  if (start === null || limit === null) return refuse('no_limit')
  if (start.clock !== end.clock) return refuse('other_clock')
  const left = stillLeft(start, end, limit)
  return left === null ? null : refuse('limit_not_reached', { leftMs: left })
}

const reachesLimit = (to: string, asks: boolean) =>
  move(limitReached, {
    to,
    automatic: true,
    when: (moment) => namesReached(moment).length > 0 === asks,
    refuses: tooEarly,
    does: (moment, end) => stop(moment, end, true),
  })

const isTyped = (to: string, asks: boolean) =>
  move(typed, {
    to,
    when: (moment, { seconds: time }) => asksAtLimit(moment, time) === asks,
    refuses: (moment, { seconds: time, confirmed }) => {
      const limit = limitOf(moment)
      if (limit !== null && time > limit) return refuse('beyond_limit', { limit })
      return notPlausible(time, plausible(moment), confirmed)
    },
    does: (moment, { seconds: time }) => {
      const limited = overLimit(moment, time)
      const confirmed = !limited && !isWithin(time, plausible(moment))
      return {
        begins: { input: 'typed', stamps: [] },
        trial: {
          outcome: limited ? 'limit' : 'done',
          readings: { time: inSeconds(limited ? null : time, { typed: true, confirmed }) },
        },
      }
    },
  })

const keeps = move(kept, {
  to: LEAVE,
  main: true,
  refuses: (moment, { stamp }) => keyDead(moment, stamp),
})

const reads = [isTyped('asked', true), isTyped('stopped', false)]

export const chart: StepChart = {
  initial: 'waiting',
  states: {
    waiting: { on: { armed: [arms], typed: reads } },
    armed: { on: { started: [starts], typed: reads } },
    running: {
      flight: 'running',
      on: {
        split: [splits],
        stopped: [breaks, stops('asked', true), stops('stopped', false)],
        limit_reached: [reachesLimit('asked', true), reachesLimit('stopped', false)],
      },
    },
    asked: { flight: 'held', on: { reached: tellsReached } },
    stopped: { flight: 'held', on: { kept: [keeps] } },
  },
}
