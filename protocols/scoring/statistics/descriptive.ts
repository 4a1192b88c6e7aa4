/** Mean, spread and quantiles of a series. Every function is null for a series too short for it. */

export const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)

export const mean = (values: readonly number[]): number | null =>
  values.length === 0 ? null : sum(values) / values.length

export const areFinite = (values: readonly number[]): boolean => values.every(Number.isFinite)

/** Sum of squares about the mean, in two passes: the one-pass form loses its digits for a small spread. */
export function squaresAbout(values: readonly number[], centre = mean(values)): number {
  return centre === null ? 0 : sum(values.map((value) => (value - centre) ** 2))
}

/**
 * Whether a sum of squares over `values` is nothing but rounding: at most n (1e-13 max|x|)². It counts as zero then,
 * so that a spread of rounding errors is never taken for one.
 */
export function isNoSpread(squares: number, values: readonly number[]): boolean {
  const largest = values.reduce((most, value) => Math.max(most, Math.abs(value)), 0)
  return squares <= values.length * (1e-13 * largest) ** 2
}

/** Sample standard deviation, denominator n - 1; exactly 0 where all values are the same but for rounding. */
export function standardDeviation(values: readonly number[]): number | null {
  if (values.length < 2) return null
  const squares = squaresAbout(values)
  return isNoSpread(squares, values) ? 0 : Math.sqrt(squares / (values.length - 1))
}

/** Hyndman & Fan 1996, Am Stat 50:361, type 7: linear between order statistics at (n - 1) p + 1. */
export function quantile(values: readonly number[], p: number): number | null {
  if (values.length === 0 || !(p >= 0 && p <= 1)) return null
  return atRank(
    values.toSorted((a, b) => a - b),
    (values.length - 1) * p + 1,
  )
}

/**
 * Between the order statistics of a sorted series, ranks counted from 1; null beyond its ends. A rank within 1e-9 of a
 * whole one is taken as whole: in binary 100 · 0.29 lies below 29.
 */
export function atRank(sorted: readonly number[], rank: number): number | null {
  const whole = Math.round(rank)
  const at = Math.abs(rank - whole) < 1e-9 ? whole : rank
  const low = sorted[Math.floor(at) - 1]
  const high = sorted[Math.ceil(at) - 1]
  return low === undefined || high === undefined ? null : low + (at - Math.floor(at)) * (high - low)
}

export const median = (values: readonly number[]): number | null => quantile(values, 0.5)
