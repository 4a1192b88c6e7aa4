/** Fisher's F distribution. */
import { incompleteBeta } from './beta.ts'
import { positiveQuantile } from './quantile.ts'

function tails(f: number, df1: number, df2: number) {
  const all = df2 + df1 * f
  const [x, y] = [df2 / all, (df1 * f) / all]
  return { upper: incompleteBeta(df2 / 2, df1 / 2, x, y), lower: incompleteBeta(df1 / 2, df2 / 2, y, x) }
}

/** P(F > f) with df1 and df2 degrees of freedom, whole or not; null unless both are above 0. A&S 26.6.2. */
export function fUpper(f: number, df1: number, df2: number): number | null {
  if (!(df1 > 0 && df2 > 0) || Number.isNaN(f)) return null
  if (f <= 0) return 1
  return f === Number.POSITIVE_INFINITY ? 0 : tails(f, df1, df2).upper
}

/** The f below which a share p lies; null unless 0 < p < 1 and both degrees of freedom are above 0. */
export const fQuantile = (p: number, df1: number, df2: number): number | null =>
  df1 > 0 && df2 > 0 && Number.isFinite(df1) && Number.isFinite(df2)
    ? positiveQuantile('lower', p, 1, (f) => tails(f, df1, df2))
    : null
