/** Quantiles of distributions of positive numbers, by their tails. */
import { rootOf } from './root.ts'

interface Tails {
  readonly lower: number
  readonly upper: number
}

/**
 * The x > 0 with that share in the named tail, sought on the scale of logarithms around `start`, by the smaller
 * tail, so that far quantiles keep their digits; null unless 0 < share < 1.
 */
export function positiveQuantile(
  tail: keyof Tails,
  share: number,
  start: number,
  tails: (x: number) => Tails,
): number | null {
  if (!(share > 0 && share < 1)) return null
  const other = tail === 'lower' ? 'upper' : 'lower'
  const sign = tail === 'lower' ? 1 : -1
  const miss = (u: number): number => {
    const at = tails(Math.exp(u))
    return share <= 0.5 ? sign * logRatio(at[tail], share) : -sign * logRatio(at[other], 1 - share)
  }
  const middle = Math.log(start)
  const root = rootOf(miss, middle - 1, middle + 1)
  return root === null ? null : Math.exp(root)
}

/** ln(a / b), with an end instead of minus infinity. */
const logRatio = (a: number, b: number): number => (a > 0 ? Math.log(a / b) : -1e4)
