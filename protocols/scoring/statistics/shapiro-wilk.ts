/** Whether a sample may come from a normal distribution. */
import { areFinite, isNoSpread, squaresAbout, sum } from './descriptive.ts'
import { normalQuantile, normalUpper } from './normal.ts'
import { because, type Undefined } from './undefined.ts'

export interface ShapiroWilk {
  readonly n: number
  readonly w: number
  readonly p: number
}

/**
 * Shapiro & Wilk 1965, Biometrika 52:591, by Royston 1995, algorithm AS R94, Appl Stat 44:547. Undefined for fewer
 * than 3 or more than 5000 values, and for values that are all the same.
 */
export function shapiroWilk(values: readonly number[]): ShapiroWilk | Undefined {
  const n = values.length
  if (!areFinite(values)) return because('not_finite')
  if (n < 3) return because('too_few')
  if (n > 5000) return because('too_many')
  const squares = squaresAbout(values)
  if (isNoSpread(squares, values)) return because('no_variance')
  const sorted = values.toSorted((a, b) => a - b)
  const half = weightsOf(n)
  const spread = sum(half.map((weight, i) => weight * ((sorted[n - 1 - i] ?? 0) - (sorted[i] ?? 0))))
  const w = Math.min(1, spread ** 2 / squares)
  return { n, w, p: pOf(w, n) }
}

const polynomial = (coefficients: readonly number[], x: number): number =>
  coefficients.reduceRight((value, coefficient) => value * x + coefficient, 0)

/** The upper half of the antisymmetric weights, largest first. */
function weightsOf(n: number): readonly number[] {
  const half = Math.floor(n / 2)
  if (n === 3) return [Math.SQRT1_2]
  const m = Array.from({ length: half }, (_, i) => -(normalQuantile((i + 1 - 0.375) / (n + 0.25)) ?? 0))
  const squares = 2 * sum(m.map((each) => each * each))
  const u = 1 / Math.sqrt(n)
  const scaled = (i: number) => (m[i] ?? 0) / Math.sqrt(squares)
  const first = scaled(0) + polynomial([0, 0.221157, -0.147981, -2.07119, 4.434685, -2.706056], u)
  if (n <= 5) return rest([first], m, squares)
  const second = scaled(1) + polynomial([0, 0.042981, -0.293762, -1.752461, 5.682633, -3.582633], u)
  return rest([first, second], m, squares)
}

/** Weights beyond the corrected ones, in proportion to the expected order statistics. */
function rest(corrected: readonly number[], m: readonly number[], squares: number): readonly number[] {
  const taken = 2 * sum(m.slice(0, corrected.length).map((each) => each * each))
  const left = 1 - 2 * sum(corrected.map((each) => each * each))
  const scale = Math.sqrt((squares - taken) / left)
  return [...corrected, ...m.slice(corrected.length).map((each) => each / scale)]
}

function pOf(w: number, n: number): number {
  if (n === 3) {
    const p = (6 / Math.PI) * (Math.asin(Math.sqrt(w)) - Math.asin(Math.sqrt(0.75)))
    return Math.min(1, Math.max(0, p))
  }
  if (w >= 1) return 1
  const y = Math.log1p(-w)
  if (n <= 11) {
    const g = 0.459 * n - 2.273
    // So far out that the approximation ends: as good as impossible.
    if (y >= g) return 0
    const mean = polynomial([0.544, -0.39978, 0.025054, -0.0006714], n)
    const sd = Math.exp(polynomial([1.3822, -0.77857, 0.062767, -0.0020322], n))
    return normalUpper((-Math.log(g - y) - mean) / sd)
  }
  const l = Math.log(n)
  const mean = polynomial([-1.5861, -0.31082, -0.083751, 0.0038915], l)
  const sd = Math.exp(polynomial([-0.4803, -0.082676, 0.0030302], l))
  return normalUpper((y - mean) / sd)
}
