/** The chi-square distribution. */
import { incompleteGamma } from './gamma.ts'
import { positiveQuantile } from './quantile.ts'

/** P(X <= x) with `df` degrees of freedom; null unless df > 0. Abramowitz & Stegun 26.4.19. */
export const chiSquareCdf = (x: number, df: number): number | null =>
  df > 0 && !Number.isNaN(x) ? incompleteGamma(df / 2, x / 2).lower : null

/** P(X > x). */
export const chiSquareUpper = (x: number, df: number): number | null =>
  df > 0 && !Number.isNaN(x) ? incompleteGamma(df / 2, x / 2).upper : null

/** The x below which a share p lies; null unless 0 < p < 1 and df > 0. */
export function chiSquareQuantile(p: number, df: number): number | null {
  if (!(df > 0 && Number.isFinite(df))) return null
  return positiveQuantile('lower', p, df, (x) => incompleteGamma(df / 2, x / 2))
}
