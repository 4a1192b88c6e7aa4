/** Whether a series rises or falls, whatever the shape of its course. */
import { areFinite, sum } from './descriptive.ts'
import { normalUpper } from './normal.ts'
import { because, type Undefined } from './undefined.ts'

export interface MannKendall {
  readonly n: number
  /** Pairs that rise less pairs that fall. */
  readonly s: number
  readonly variance: number
  /** With the correction for continuity; null where everything is tied. */
  readonly z: number | null
  /** Two-sided. */
  readonly p: number | null
  /** `exact` without ties up to 20 points, else `normal`. */
  readonly method: 'exact' | 'normal'
}

/** Up to so many points p is counted instead of approximated. */
const COUNTED = 20

/**
 * Mann 1945, Econometrica 13:245; Kendall 1975, Rank Correlation Methods: with ties in values and in times. Fewer
 * than five points can't reach p < .05. Undefined for fewer than two points.
 */
export function mannKendall(times: readonly number[], values: readonly number[]): MannKendall | Undefined {
  if (times.length !== values.length) return because('unlike_length')
  if (!areFinite(times) || !areFinite(values)) return because('not_finite')
  const n = times.length
  if (n < 2) return because('too_few')
  const s = pairs(times, values)
  const [inValues, inTimes] = [ties(values), ties(times)]
  const variance = varianceOf(n, inValues, inTimes)
  const isTied = inValues.length + inTimes.length > 0
  if (!(variance > 0)) return { n, s, variance: 0, z: null, p: null, method: 'normal' }
  const z = (s - Math.sign(s)) / Math.sqrt(variance)
  return isTied || n > COUNTED
    ? { n, s, variance, z, p: Math.min(1, 2 * normalUpper(Math.abs(z))), method: 'normal' }
    : { n, s, variance, z, p: counted(n, s), method: 'exact' }
}

function pairs(times: readonly number[], values: readonly number[]): number {
  let s = 0
  for (let i = 0; i < times.length; i++)
    for (let j = i + 1; j < times.length; j++)
      s += Math.sign((times[j] ?? 0) - (times[i] ?? 0)) * Math.sign((values[j] ?? 0) - (values[i] ?? 0))
  // A product of a zero and a falling pair is minus zero.
  return s + 0
}

/** Sizes of the groups of equal values, those of one left out. */
const ties = (values: readonly number[]): number[] =>
  [...Map.groupBy(values, (value) => value + 0).values()]
    .map(({ length }) => length)
    .filter((length) => length > 1)

const twos = (sizes: readonly number[]): number => sum(sizes.map((t) => t * (t - 1)))
const threes = (sizes: readonly number[]): number => sum(sizes.map((t) => t * (t - 1) * (t - 2)))
const alone = (sizes: readonly number[]): number => sum(sizes.map((t) => t * (t - 1) * (2 * t + 5)))

function varianceOf(n: number, y: readonly number[], x: readonly number[]): number {
  const untied = (alone([n]) - alone(y) - alone(x)) / 18
  const triples = n > 2 ? (threes(y) * threes(x)) / (9 * threes([n])) : 0
  return untied + triples + (twos(y) * twos(x)) / (2 * twos([n]))
}

/** Share of all orders with an |S| at least so large, by the numbers of inversions (Kendall 1975, chapter 5). */
function counted(n: number, s: number): number {
  let shares = [1]
  for (let m = 2; m <= n; m++) {
    const next = Array.from({ length: shares.length + m - 1 }, () => 0)
    shares.forEach((share, inversions) => {
      for (let more = 0; more < m; more++)
        next[inversions + more] = (next[inversions + more] ?? 0) + share / m
    })
    shares = next
  }
  const most = (n * (n - 1)) / 2
  return Math.min(1, sum(shares.filter((_, inversions) => Math.abs(most - 2 * inversions) >= Math.abs(s))))
}
