/** How far two ways of measuring the same thing lie apart: limits of agreement. */
import { areFinite, mean, standardDeviation } from './descriptive.ts'
import { leastSquares, type Line } from './least-squares.ts'
import { normalQuantile } from './normal.ts'
import { noncentralTQuantile, tQuantile } from './student-t.ts'
import { because, type Interval, isUndefined, type Undefined } from './undefined.ts'

interface Limit {
  readonly value: number
  /** Exact, by noncentral t. */
  readonly interval: Interval
  /** The approximation of 1999, which papers print. */
  readonly approximate: Interval
}

export interface BlandAltman {
  readonly n: number
  /** Mean of first less second. */
  readonly bias: number
  readonly biasInterval: Interval
  /** SD of the differences. */
  readonly sd: number
  readonly lower: Limit
  readonly upper: Limit
  /** Differences against means: a slope is a bias that grows with the size. Null where the means are all the same. */
  readonly proportional: Line | null
}

/**
 * Bias and limits bias ∓ z.975 SD: Bland & Altman 1986, Lancet 327:307; intervals 1999, Stat Methods Med Res 8:135,
 * and exact ones, bias + SD t / sqrt(n) with the quantiles of noncentral t of n - 1 degrees of freedom and
 * noncentrality z.975 sqrt(n) (Carkeet 2015, Optom Vis Sci 92:e71). Undefined for fewer than two pairs.
 */
export function blandAltman(first: readonly number[], second: readonly number[]): BlandAltman | Undefined {
  if (first.length !== second.length) return because('unlike_length')
  if (!areFinite(first) || !areFinite(second)) return because('not_finite')
  const n = first.length
  const differences = first.map((value, i) => value - (second[i] ?? 0))
  const bias = mean(differences)
  const sd = standardDeviation(differences)
  if (bias === null || sd === null) return because('too_few')
  const half = ((tQuantile(0.975, n - 1) ?? 0) * sd) / Math.sqrt(n)
  const means = first.map((value, i) => (value + (second[i] ?? 0)) / 2)
  const line = leastSquares(means, differences)
  const far = { bias, sd, n }
  return {
    n,
    bias,
    biasInterval: [bias - half, bias + half],
    sd,
    lower: limit(far, -1),
    upper: limit(far, 1),
    proportional: isUndefined(line) ? null : line,
  }
}

function limit({ bias, sd, n }: { bias: number; sd: number; n: number }, side: 1 | -1): Limit {
  const z = normalQuantile(0.975) ?? 0
  const value = bias + side * z * sd
  const half = (tQuantile(0.975, n - 1) ?? 0) * sd * Math.sqrt(1 / n + z ** 2 / (2 * (n - 1)))
  const exact = (p: number): number | null => {
    const t = noncentralTQuantile(p, n - 1, z * Math.sqrt(n))
    return t === null ? null : bias + (side * sd * t) / Math.sqrt(n)
  }
  const [inner, outer] = [exact(0.025), exact(0.975)]
  return {
    value,
    interval: side === 1 ? [inner, outer] : [outer, inner],
    approximate: [value - half, value + half],
  }
}
