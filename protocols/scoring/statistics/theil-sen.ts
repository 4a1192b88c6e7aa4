/** A straight line that a few stray points don't bend. */
import { areFinite, atRank, median } from './descriptive.ts'
import { mannKendall } from './mann-kendall.ts'
import { normalQuantile } from './normal.ts'
import { because, type Interval, isUndefined, type Undefined } from './undefined.ts'

export interface TheilSen {
  readonly n: number
  /** Pairs of points with different times. */
  readonly pairs: number
  readonly slope: number
  /** `separate`: median y less slope · median x; `joint`: median of y - slope · x. They differ. */
  readonly intercept: { readonly separate: number; readonly joint: number }
  /** 95 % interval of the slope; an end beyond the outermost slope is null. */
  readonly interval: Interval
}

/**
 * Median of the slopes between all pairs of points with different times: Theil 1950; Sen 1968, J Am Stat Assoc
 * 63:1379. Interval by the ranks (N ∓ C) / 2, C = z.975 sqrt(var S), linear between ranks (Gilbert 1987, Statistical
 * Methods for Environmental Pollution Monitoring, 16.5), var S that of Mann and Kendall with ties. Undefined for fewer
 * than two points, and where all times are the same (`no_variance`).
 */
export function theilSen(times: readonly number[], values: readonly number[]): TheilSen | Undefined {
  if (times.length !== values.length) return because('unlike_length')
  if (!areFinite(times) || !areFinite(values)) return because('not_finite')
  if (times.length < 2) return because('too_few')
  const slopes = slopesOf(times, values)
  const slope = median(slopes)
  const [middleTime, middleValue] = [median(times), median(values)]
  const joint = median(values.map((value, i) => value - (slope ?? 0) * (times[i] ?? 0)))
  if (slope === null || middleTime === null || middleValue === null || joint === null)
    return because('no_variance')
  return {
    n: times.length,
    pairs: slopes.length,
    slope,
    intercept: { separate: middleValue - slope * middleTime, joint },
    interval: intervalOf(slopes, times, values),
  }
}

/** Rising. */
function slopesOf(times: readonly number[], values: readonly number[]): number[] {
  const slopes: number[] = []
  for (let i = 0; i < times.length; i++)
    for (let j = i + 1; j < times.length; j++) {
      const apart = (times[j] ?? 0) - (times[i] ?? 0)
      if (apart !== 0) slopes.push(((values[j] ?? 0) - (values[i] ?? 0)) / apart)
    }
  return slopes.sort((a, b) => a - b)
}

function intervalOf(
  slopes: readonly number[],
  times: readonly number[],
  values: readonly number[],
): Interval {
  const trend = mannKendall(times, values)
  if (isUndefined(trend)) return [null, null]
  const c = (normalQuantile(0.975) ?? 0) * Math.sqrt(trend.variance)
  const n = slopes.length
  return [atRank(slopes, (n - c) / 2), atRank(slopes, (n + c) / 2 + 1)]
}
