/** One person against a sample, where mean and SD of the sample are themselves uncertain. */
import { normalCdf } from './normal.ts'
import { noncentralityFor, tUpper } from './student-t.ts'
import { because, type Undefined } from './undefined.ts'

export interface SingleCase {
  readonly t: number
  readonly df: number
  /** Two-sided. */
  readonly p: number
  /** Per cent of the population estimated to lie below. */
  readonly percentile: number
  /** 95 % interval of that percentile for the sampling error of the group. */
  readonly interval: readonly [number, number]
}

export interface Sample {
  readonly mean: number
  readonly sd: number
  readonly n: number
}

/**
 * t = (x - mean) / (SD sqrt((n + 1) / n)) with n - 1 degrees of freedom: Crawford & Howell 1998, Clin Neuropsychol
 * 12:482. Undefined for a sample of one or without spread.
 */
export function singleCase(x: number, { mean, sd, n }: Sample): SingleCase | Undefined {
  if (![x, mean, sd, n].every(Number.isFinite)) return because('not_finite')
  if (n < 2) return because('too_few')
  if (sd < 0) return because('out_of_range')
  if (sd === 0) return because('no_variance')
  const z = (x - mean) / sd
  return against(z / Math.sqrt((n + 1) / n), n - 1, percentileInterval(z, n))
}

/**
 * 95 % interval of the percentile of somebody z standard deviations above the mean of a sample of n: Crawford &
 * Garthwaite 2002, Neuropsychologia 40:1196. z sqrt(n) is the .975 (for the lower end) and the .025 (for the upper
 * end) quantile of noncentral t with n - 1 degrees of freedom and noncentrality δ; the ends are 100 Φ(δ / sqrt(n)).
 * Null for n below 2.
 */
export function percentileInterval(z: number, n: number): readonly [number, number] | null {
  const root = Math.sqrt(n)
  const low = noncentralityFor(z * root, n - 1, 0.975)
  const high = noncentralityFor(z * root, n - 1, 0.025)
  return low === null || high === null ? null : [100 * normalCdf(low / root), 100 * normalCdf(high / root)]
}

function against(t: number, df: number, interval: readonly [number, number] | null): SingleCase | Undefined {
  const upper = tUpper(Math.abs(t), df)
  if (upper === null || interval === null) return because('out_of_range')
  return { t, df, p: 2 * upper, percentile: 100 * (t < 0 ? upper : 1 - upper), interval }
}

/** Two tasks, or two hands, of the same sample. */
export interface TwoTasks {
  readonly x: { readonly mean: number; readonly sd: number }
  readonly y: { readonly mean: number; readonly sd: number }
  /** Correlation of the two in the sample: without it no difference can be judged. */
  readonly r: number
  readonly n: number
}

/**
 * Whether a person's difference between two tasks is unusual in the sample: the unstandardized difference test,
 * t = ((x - mean x) - (y - mean y)) / (SD of differences sqrt((n + 1) / n)), n - 1 degrees of freedom (Crawford &
 * Garthwaite 2005, Neuropsychology 19:318). Both in one unit.
 */
export function differenceOfCase(
  x: number,
  y: number,
  { x: ofX, y: ofY, r, n }: TwoTasks,
): Pick<SingleCase, 't' | 'df' | 'p'> | Undefined {
  if (![x, y, ofX.mean, ofX.sd, ofY.mean, ofY.sd, r, n].every(Number.isFinite)) return because('not_finite')
  if (n < 2) return because('too_few')
  if (r < -1 || r > 1 || ofX.sd < 0 || ofY.sd < 0) return because('out_of_range')
  const squared = (ofX.sd - ofY.sd) ** 2 + 2 * ofX.sd * ofY.sd * (1 - r)
  if (!(squared > 0)) return because('no_variance')
  const t = (x - ofX.mean - (y - ofY.mean)) / Math.sqrt((squared * (n + 1)) / n)
  return { t, df: n - 1, p: 2 * (tUpper(Math.abs(t), n - 1) ?? 0) }
}
