/** Student's t distribution and its noncentral form. */
import { incompleteBeta } from './beta.ts'
import { normalCdf, normalQuantile, normalUpper } from './normal.ts'
import { positiveQuantile } from './quantile.ts'
import { rootOf } from './root.ts'

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

/** The t below which a share p lies; null unless 0 < p < 1 and df > 0. */
export function tQuantile(p: number, df: number): number | null {
  if (!(p > 0 && p < 1 && df > 0)) return null
  if (p === 0.5) return 0
  if (df === Number.POSITIVE_INFINITY) return normalQuantile(p)
  const size = positiveQuantile('upper', Math.min(p, 1 - p), 1, (t) => {
    const upper = tUpper(t, df) ?? 0
    return { upper, lower: 1 - upper }
  })
  if (size === null) return null
  return p < 0.5 ? -size : size
}

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
 * The noncentrality for which P(T <= t) is p; null unless 0 < p < 1, df > 0. As a normal quantile P falls almost
 * straight with the noncentrality, so a few secant steps, kept between bounds, find it to about 1e-12.
 */
export function noncentralityFor(t: number, df: number, p: number): number | null {
  const wanted = normalQuantile(p)
  if (wanted === null || !(df > 0) || !Number.isFinite(t)) return null
  const spread = Math.sqrt(1 + (t * t) / (2 * df))
  const miss = (at: number): number => quantileWithin(noncentralTCdf(t, df, at) ?? p) - wanted
  let low = Number.NEGATIVE_INFINITY
  let high = Number.POSITIVE_INFINITY
  let at = t - wanted * spread
  let off = miss(at)
  let slope = -1 / spread
  for (let step = 0; step < 100 && Math.abs(off) > 1e-13; step++) {
    if (off > 0) low = at
    else high = at
    const next = between(low, high, at - off / slope, spread)
    if (next === at) break
    const offNext = miss(next)
    slope = offNext === off ? slope : (offNext - off) / (next - at)
    at = next
    off = offNext
  }
  return at
}

/** The normal quantile, with the ends of doubles instead of none. */
const quantileWithin = (p: number): number => normalQuantile(p) ?? (p <= 0 ? -40 : 40)

/** A step that stays between the bounds: as proposed, else halfway, else on into the open. */
function between(low: number, high: number, proposed: number, spread: number): number {
  if (proposed > low && proposed < high) return proposed
  if (Number.isFinite(low) && Number.isFinite(high)) return (low + high) / 2
  return Number.isFinite(low) ? low + 4 * spread : high - 4 * spread
}

/**
 * The t below which a share p of noncentral t with noncentrality `delta` lies; null unless 0 < p < 1, df > 0. Sought
 * on the scale of normal quantiles, on which P rises almost straight.
 */
export function noncentralTQuantile(p: number, df: number, delta: number): number | null {
  const wanted = normalQuantile(p)
  if (wanted === null || !(df > 0) || !Number.isFinite(delta)) return null
  const spread = Math.sqrt(1 + (delta * delta) / (2 * df))
  const middle = delta + wanted * spread
  return rootOf(
    (t) => quantileWithin(noncentralTCdf(t, df, delta) ?? p) - wanted,
    middle - spread,
    middle + spread,
  )
}
