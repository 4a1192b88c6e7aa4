/** The gamma function and its regularized incomplete form. */

const HALF_LN_2PI = Math.log(2 * Math.PI) / 2

/** What Stirling's formula leaves out of ln Γ(x), for x >= 10: Abramowitz & Stegun 6.1.41. */
export function stirlingRest(x: number): number {
  const y = 1 / (x * x)
  return (
    (1 / 12 -
      y * (1 / 360 - y * (1 / 1260 - y * (1 / 1680 - y * (1 / 1188 - y * (691 / 360360 - y / 156)))))) /
    x
  )
}

/** ln Γ(x) for x > 0. */
export function logGamma(x: number): number {
  let shift = 1
  let at = x
  for (; at < 10; at++) shift *= at
  return (at - 0.5) * Math.log(at) - at + HALF_LN_2PI + stirlingRest(at) - Math.log(shift)
}

/** x^a e^-x / Γ(a + 1). For a large `a` by Stirling's formula at once, since the logarithms nearly cancel. */
function front(a: number, x: number): number {
  if (a < 10) return Math.exp(a * Math.log(x) - x - logGamma(a + 1))
  const off = (x - a) / a
  return Math.exp(a * (logOf1p(off, x / a) - off) - stirlingRest(a)) / Math.sqrt(2 * Math.PI * a)
}

/** ln(1 + off), where 1 + off is known too. */
const logOf1p = (off: number, whole: number): number =>
  Math.abs(off) < 0.5 ? Math.log1p(off) : Math.log(whole)

/**
 * P(a, x), the lower share of the gamma distribution of shape a > 0, and Q = 1 - P, each by the expansion that is
 * its own: a series of positive terms (Abramowitz & Stegun 6.5.29) or a continued fraction (6.5.31, by Lentz).
 */
export function incompleteGamma(a: number, x: number): { readonly lower: number; readonly upper: number } {
  if (x <= 0) return { lower: 0, upper: 1 }
  if (x === Number.POSITIVE_INFINITY) return { lower: 1, upper: 0 }
  if (x < a + 1) {
    const lower = front(a, x) * series(a, x)
    return { lower, upper: 1 - lower }
  }
  const upper = front(a, x) * a * fraction(a, x)
  return { lower: 1 - upper, upper }
}

function series(a: number, x: number): number {
  let term = 1
  let sum = 1
  for (let n = 1; term > sum * 1e-17 && n < 1_000_000; n++) {
    term *= x / (a + n)
    sum += term
  }
  return sum
}

function fraction(a: number, x: number): number {
  const tiny = 1e-300
  let b = x + 1 - a
  let c = 1 / tiny
  let d = 1 / b
  let result = d
  for (let n = 1; n < 1_000_000; n++) {
    const numerator = -n * (n - a)
    b += 2
    d = 1 / nonzero(numerator * d + b)
    c = nonzero(b + numerator / c)
    const step = c * d
    result *= step
    if (Math.abs(step - 1) < 1e-16) break
  }
  return result
}

const nonzero = (value: number): number => (Math.abs(value) < 1e-300 ? 1e-300 : value)
