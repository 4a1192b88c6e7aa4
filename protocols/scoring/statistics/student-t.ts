/** Student's t distribution and its noncentral form. */
import { incompleteBeta } from './beta.ts'
import { normalCdf, normalUpper } from './normal.ts'

/** From so many degrees of freedom on the continued fraction loses digits, and t is as good as normal. */
const MANY = 50_000

/**
 * P(T > t) with `df` degrees of freedom; null unless df > 0. By the incomplete beta function (Abramowitz & Stegun
 * 26.7.1), each tail on its own.
 */
export function tUpper(t: number, df: number): number | null {
  if (!(df > 0) || Number.isNaN(t)) return null
  if (df === Number.POSITIVE_INFINITY) return normalUpper(t)
  const square = t * t
  if (square === Number.POSITIVE_INFINITY) return t > 0 ? 0 : 1
  if (df > MANY) return normalUpper(asNormal(t, df))
  const tail = incompleteBeta(df / 2, 0.5, df / (df + square), square / (df + square)) / 2
  return t >= 0 ? tail : 1 - tail
}

/** The normal deviate with the same tail, for many degrees of freedom: Hill 1970, CACM 13:617, algorithm 395. */
function asNormal(t: number, df: number): number {
  const a = df - 0.5
  const b = 48 * a * a
  const y = a * Math.log1p((t * t) / df)
  const rest = (((-0.4 * y - 3.3) * y - 24) * y - 85.5) / (0.8 * y * y + 100 + b) + y + 3
  return Math.sign(t) * (rest / b + 1) * Math.sqrt(y)
}

/** P(T <= t). */
export const tCdf = (t: number, df: number): number | null => tUpper(-t, df)

/**
 * P(T <= t) for noncentral t with noncentrality `delta`; null unless df > 0. It is the mean of Φ(t s - δ) over
 * s = sqrt(χ²/df); with u = ln s the weight falls off so fast on both sides that the trapezoidal rule is as exact
 * as doubles are. All terms are positive: nothing cancels.
 */
export function noncentralTCdf(t: number, df: number, delta: number): number | null {
  if (!(df > 0) || !Number.isFinite(t) || !Number.isFinite(delta)) return null
  const spread = 1 / Math.sqrt(2 * df)
  const step = Math.min(spread, 1 / Math.max(1, Math.abs(t))) / 4
  const weight = (u: number): number => Math.exp(df * (u - Math.expm1(2 * u) / 2))
  let below = 0
  let all = 0
  const add = (u: number): boolean => {
    const w = weight(u)
    all += w
    below += w * normalCdf(t * Math.exp(u) - delta)
    return w > 1e-22
  }
  for (let u = 0; add(u); u += step);
  for (let u = -step; add(u); u -= step);
  return below / all
}

/**
 * The noncentrality for which P(T <= t) is p; null unless 0 < p < 1, df > 0. P falls as the noncentrality rises,
 * so it is bracketed and halved until doubles end.
 */
export function noncentralityFor(t: number, df: number, p: number): number | null {
  if (!(p > 0 && p < 1) || !(df > 0) || !Number.isFinite(t)) return null
  const width = 8 * Math.sqrt(1 + (t * t) / (2 * df)) + 8
  let low = t - width
  let high = t + width
  for (let grow = 0; grow < 60 && (noncentralTCdf(t, df, low) ?? 1) < p; grow++) low -= width
  for (let grow = 0; grow < 60 && (noncentralTCdf(t, df, high) ?? 0) > p; grow++) high += width
  for (let halving = 0; halving < 200; halving++) {
    const middle = (low + high) / 2
    if (middle === low || middle === high) break
    if ((noncentralTCdf(t, df, middle) ?? 0) > p) low = middle
    else high = middle
  }
  return (low + high) / 2
}
