/** A straight line by least squares. */
import { areFinite, isNoSpread, mean, squaresAbout, sum } from './descriptive.ts'
import { tQuantile, tUpper } from './student-t.ts'
import { because, type Interval, type Undefined } from './undefined.ts'

export interface Line {
  readonly n: number
  readonly slope: number
  readonly intercept: number
  /** Of the slope; null for fewer than three points. */
  readonly standardError: number | null
  /** 95 %, t with n - 2 degrees of freedom; no ends for fewer than three points. */
  readonly interval: Interval
  /** Test of a slope of zero; null for fewer than three points and for a perfect line. */
  readonly t: number | null
  /** Two-sided. */
  readonly p: number | null
  /** Square root of the residual mean square; null for fewer than three points. */
  readonly residualSd: number | null
}

/**
 * The line through points by least squares on centred values (any textbook: Draper & Smith 1998, Applied Regression
 * Analysis, chapter 1). Undefined for fewer than two points, and where all x are the same (`no_variance`).
 */
export function leastSquares(x: readonly number[], y: readonly number[]): Line | Undefined {
  if (x.length !== y.length) return because('unlike_length')
  if (!areFinite(x) || !areFinite(y)) return because('not_finite')
  const n = x.length
  const [meanX, meanY] = [mean(x), mean(y)]
  if (n < 2 || meanX === null || meanY === null) return because('too_few')
  const across = squaresAbout(x)
  if (isNoSpread(across, x)) return because('no_variance')
  const slope = sum(x.map((value, i) => (value - meanX) * ((y[i] ?? 0) - meanY))) / across
  const intercept = meanY - slope * meanX
  const known = { n, slope, intercept }
  if (n < 3)
    return { ...known, standardError: null, interval: [null, null], t: null, p: null, residualSd: null }
  const residuals = x.map((value, i) => (y[i] ?? 0) - meanY - slope * (value - meanX))
  const squares = squaresAbout(residuals, 0)
  const residualSd = isNoSpread(squares, y) ? 0 : Math.sqrt(squares / (n - 2))
  const standardError = residualSd / Math.sqrt(across)
  const half = (tQuantile(0.975, n - 2) ?? 0) * standardError
  const t = standardError === 0 ? null : slope / standardError
  const upper = t === null ? null : tUpper(Math.abs(t), n - 2)
  const p = upper === null ? null : 2 * upper
  return { ...known, standardError, interval: [slope - half, slope + half], t, p, residualSd }
}
