/**
 * The clock outside the chart: it says that a span counted from an input's stamp is over. The moment it gives is
 * worked out from the start, so that a late timer never changes a time.
 */
import { CLOCK, type Moment, momentAfter } from './clock.ts'

/** What a ticker needs of a page: its monotonic clock and a way to be called later. */
export interface Page {
  readonly now: () => number
  /** Calls back after about `ms`; gives back how to call that off. */
  readonly later: (then: () => void, ms: number) => () => void
}

const PAGE: Page = {
  now: () => performance.now(),
  later: (then, ms) => {
    const timer = setTimeout(then, ms)
    return () => clearTimeout(timer)
  },
}

/** The longest that a browser's timer can wait; a longer span is waited for in pieces. */
const LONGEST_WAIT = 2_000_000_000

const nothingToCallOff = (): void => {}

/**
 * Calls `over` once `ms` have passed since `start`, never before, with that very moment. A start
 * on another clock (an earlier page load) can't be measured from here: nothing is called. Gives back how to
 * call it off.
 */
export function whenOver(
  start: Moment,
  ms: number,
  over: (moment: Moment) => void,
  page: Page = PAGE,
): () => void {
  if (start.clock !== CLOCK) return nothingToCallOff
  let callOff: (() => void) | null = null
  const end = momentAfter(start, ms)
  const look = (): void => {
    const left = end.at - page.now()
    if (left <= 0) over(end)
    else callOff = page.later(look, Math.min(Math.ceil(left), LONGEST_WAIT))
  }
  callOff = page.later(look, 0)
  return () => callOff?.()
}

/** Seconds to show for a span of ms that is still running: whole, counted down, never below zero. */
export function secondsLeft(start: Moment, ms: number, now: number): number {
  return Math.max(0, Math.ceil((start.at + ms - now) / 1000))
}

/** Seconds that have run since `start`, in tenths as a running clock shows them. */
export function secondsRun(start: Moment, now: number): number {
  return Math.max(0, Math.floor((now - start.at) / 100) / 10)
}
