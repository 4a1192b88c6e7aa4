/** The regularized incomplete beta function. */

import { logGamma, stirlingRest } from './gamma.ts'

/**
 * ln B(a, b). For a large argument the difference of its two log-gammas is taken by Stirling's formula at once,
 * since half the digits vanish otherwise (DiDonato & Morris 1992, ACM TOMS 18:360).
 */
function logBeta(a: number, b: number): number {
  const small = Math.min(a, b)
  const large = Math.max(a, b)
  if (large < 10) return logGamma(small) + logGamma(large) - logGamma(small + large)
  const sum = small + large
  const difference =
    (large - 0.5) * Math.log1p(-small / sum) -
    small * Math.log(sum) +
    small +
    stirlingRest(large) -
    stirlingRest(sum)
  return logGamma(small) + difference
}

/**
 * I_x(a, b) for a, b > 0, with y = 1 - x given beside x so that neither loses digits. The continued fraction of
 * Abramowitz & Stegun 26.5.8 by Lentz's method, on the side where it converges fast.
 */
export function incompleteBeta(a: number, b: number, x: number, y: number): number {
  if (x <= 0) return 0
  if (y <= 0) return 1
  const front = Math.exp(a * logOf(x, y) + b * logOf(y, x) - logBeta(a, b))
  return x < (a + 1) / (a + b + 2) ? (front * fraction(a, b, x)) / a : 1 - (front * fraction(b, a, y)) / b
}

/** ln x, by way of its complement where x is near one. */
const logOf = (x: number, complement: number): number => (x > 0.5 ? Math.log1p(-complement) : Math.log(x))

function fraction(a: number, b: number, x: number): number {
  const tiny = 1e-300
  const kept = (value: number): number => (Math.abs(value) < tiny ? tiny : value)
  let c = 1
  let d = 1 / kept(1 - ((a + b) * x) / (a + 1))
  let result = d
  for (let m = 1; m < 200_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
    d = 1 / kept(1 + even * d)
    c = kept(1 + even / c)
    result *= d * c
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1))
    d = 1 / kept(1 + odd * d)
    c = kept(1 + odd / c)
    const step = d * c
    result *= step
    if (Math.abs(step - 1) < 1e-16) break
  }
  return result
}
