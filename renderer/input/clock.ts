/**
 * The one clock of this page. Times of trials are differences of input-event stamps on it; a stamp from
 * another page load is on another clock, and its name says so.
 */
import type { Stamp } from '../../protocols/runner/events.ts'
import type { Press } from './press.ts'

function nameOfClock(): string {
  const random = crypto.getRandomValues(new Uint32Array(2))
  return `${Math.round(performance.timeOrigin).toString(36)}-${Array.from(random, (part) => part.toString(36)).join('')}`
}

/** Name of this page load's monotonic clock. */
export const CLOCK = nameOfClock()

/** The stamp of a press: its own time, never the handler's; `late` says how long it took to get here. */
export function stampOf(press: Pick<Press, 'at' | 'input'>, now: number): Stamp {
  return { at: press.at, clock: CLOCK, input: press.input, late: now - press.at }
}

/** A moment on one of the monotonic clocks, as an input's stamp names it. */
export interface Moment {
  readonly at: number
  readonly clock: string
}

/** The moment `ms` after another on the same clock; never a hair less, whatever the sum is rounded to. */
export function momentAfter(from: Moment, ms: number): Moment {
  let at = from.at + ms
  while (at - from.at < ms) at += at * Number.EPSILON
  return { at, clock: from.clock }
}

export const momentNow = (): Moment => ({ at: performance.now(), clock: CLOCK })

/** Smallest step in ms by which `read` moves, over at least `steps` steps. Stops after `most` readings. */
export function smallestStep(read: () => number, steps: number, most: number): number {
  let smallest = Number.POSITIVE_INFINITY
  let seen = 0
  let before = read()
  for (let count = 0; count < most && seen < steps; count += 1) {
    const now = read()
    if (now > before) {
      smallest = Math.min(smallest, now - before)
      seen += 1
      before = now
    }
  }
  return Number.isFinite(smallest) ? smallest : 0
}

/** How finely this page's clock tells time apart: kept with every administration. */
export function measureClock(): { clock: string; resolutionMs: number; isolated: boolean } {
  return {
    clock: CLOCK,
    resolutionMs: smallestStep(() => performance.now(), 20, 2_000_000),
    isolated: globalThis.crossOriginIsolated === true,
  }
}
