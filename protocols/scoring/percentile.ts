/** Where a value stands among a norm group of known size. */
import { normalCdf } from './statistics/normal.ts'
import { percentileInterval } from './statistics/single-case.ts'
import { tCdf } from './statistics/student-t.ts'

/** Below this size a norm group's own sampling error is taken into the percentile. */
const SMALL_GROUP = 50

export interface Percentile {
  /** Per cent of the group below, between 0 and 100. */
  readonly percentile: number | null
  /** 95 % interval for sampling error; null where the group's size isn't known. */
  readonly interval: readonly [number, number] | null
  readonly definition: 'normal' | 'modified-t'
}

/**
 * The percentile of somebody `z` standard deviations above the mean of a group of `n` (null: size unknown).
 * Under 50 by the modified t (Crawford & Howell 1998, Clin Neuropsychol 12:482): t = z / sqrt((n + 1) / n) with
 * n - 1 degrees of freedom; else by the normal curve. Undefined for a group of one.
 */
export function percentileOf(z: number, n: number | null): Percentile {
  if (n === null) return { percentile: 100 * normalCdf(z), interval: null, definition: 'normal' }
  if (n < 2) return { percentile: null, interval: null, definition: 'modified-t' }
  if (n >= SMALL_GROUP)
    return { percentile: 100 * normalCdf(z), interval: percentileInterval(z, n), definition: 'normal' }
  const below = tCdf(z / Math.sqrt((n + 1) / n), n - 1)
  return {
    percentile: below === null ? null : 100 * below,
    interval: percentileInterval(z, n),
    definition: 'modified-t',
  }
}
