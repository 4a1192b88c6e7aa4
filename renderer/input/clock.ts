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

/** A stamp worked out from an earlier one on the same clock, such as the end of a window. */
export function stampAfter(start: Stamp, ms: number, now: number): Stamp {
  const at = start.at + ms
  return { at, clock: start.clock, input: start.input, late: now - at }
}

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
