/** The standard normal distribution. Each tail is computed on its own, so that none is one less the other. */

const SQRT_PI = Math.sqrt(Math.PI)
const SQRT_2PI = Math.sqrt(2 * Math.PI)

/** Density at z. */
const normalDensity = (z: number): number => Math.exp((-z * z) / 2) / SQRT_2PI

/** P(Z <= z), relative error about 1e-13 in either tail. */
export const normalCdf = (z: number): number => erfc(-z / Math.SQRT2) / 2

/** P(Z > z). */
export const normalUpper = (z: number): number => erfc(z / Math.SQRT2) / 2

/**
 * The complementary error function. Abramowitz & Stegun 1964, Handbook of Mathematical Functions, 7.1.6 (a
 * series of positive terms) near zero and 7.1.14 (a continued fraction) beyond.
 */
function erfc(x: number): number {
  if (x < 0) return 2 - erfc(-x)
  if (x < 2) return 1 - errorSeries(x)
  return x > 27.3 ? 0 : Math.exp(-x * x) / (SQRT_PI * tailFraction(x))
}

/** erf(x) = 2/sqrt(pi) exp(-x^2) sum of 2^n x^(2n+1) / (1·3·…·(2n+1)). */
function errorSeries(x: number): number {
  let term = x
  let sum = x
  for (let n = 1; term > sum * 1e-17 && n < 200; n++) {
    term *= (2 * x * x) / (2 * n + 1)
    sum += term
  }
  return (2 / SQRT_PI) * Math.exp(-x * x) * sum
}

/** x + (1/2)/(x + 1/(x + (3/2)/(x + …))), from the far end; the farther out, the fewer terms it takes. */
function tailFraction(x: number): number {
  let fraction = x
  for (let k = Math.ceil(20 + 400 / (x * x)); k >= 1; k--) fraction = x + k / 2 / fraction
  return fraction
}

/**
 * The z below which a share p lies; null outside (0, 1). A rough start (Abramowitz & Stegun 26.2.23) is refined
 * by Halley steps, relative error about 1e-15.
 */
export function normalQuantile(p: number): number | null {
  if (!(p > 0 && p < 1)) return null
  if (p > 0.5) return -lowerQuantile(1 - p)
  return p === 0.5 ? 0 : lowerQuantile(p)
}

function lowerQuantile(p: number): number {
  const t = Math.sqrt(-2 * Math.log(p))
  let z =
    (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308))) - t
  for (let step = 0; step < 4; step++) {
    const error = (normalCdf(z) - p) / normalDensity(z)
    if (!Number.isFinite(error)) break
    z -= error / (1 + (z * error) / 2)
  }
  return z
}
