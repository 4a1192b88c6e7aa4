/** Agreement on categories beyond chance. */
import { sum } from './descriptive.ts'
import { normalQuantile, normalUpper } from './normal.ts'
import { because, type Interval, type Undefined } from './undefined.ts'

export const KAPPA_WEIGHTS = ['plain', 'linear', 'quadratic'] as const
export type KappaWeights = (typeof KAPPA_WEIGHTS)[number]

export interface Kappa {
  readonly value: number
  readonly n: number
  /** Weighted shares of agreement: seen, and to be expected by chance. */
  readonly observed: number
  readonly expected: number
  /** For the interval. */
  readonly standardError: number
  readonly interval: Interval
  /** Test of no agreement beyond chance, with a standard error of its own; null where that is zero. */
  readonly z: number | null
  /** Two-sided. */
  readonly p: number | null
}

/** A variance below this is nothing but rounding. */
const NO_VARIANCE = 1e-15

/** 1 on the diagonal; the categories are in order, and all declared ones count, also those nobody used. */
export function weightsFor(kind: KappaWeights, categories: number): readonly (readonly number[])[] {
  const most = Math.max(1, categories - 1)
  const weight = (away: number): number => {
    if (kind === 'plain') return away === 0 ? 1 : 0
    return kind === 'linear' ? 1 - away / most : 1 - (away / most) ** 2
  }
  return range(categories).map((i) => range(categories).map((j) => weight(Math.abs(i - j))))
}

/**
 * Kappa of two raters: Cohen 1960, Educ Psychol Meas 20:37; weighted: Cohen 1968, Psychol Bull 70:213; standard
 * errors: Fleiss, Cohen & Everitt 1969, Psychol Bull 72:323. Undefined without subjects, and where both used one
 * category only (`no_variance`): say the per cent of agreement then.
 * @param table counts: rows by what the first rater said, columns by the second
 * @param weights of agreement, 1 on the diagonal: from `weightsFor`, or of one's own
 */
export function kappa(
  table: readonly (readonly number[])[],
  weights: readonly (readonly number[])[],
): Kappa | Undefined {
  const c = table.length
  if (table.some((row) => row.length !== c) || weights.length !== c) return because('unlike_length')
  const cells = table.flat()
  if (!cells.every(Number.isFinite)) return because('not_finite')
  if (cells.some((count) => count < 0)) return because('out_of_range')
  const n = sum(cells)
  if (!(n > 0)) return because('too_few')
  const all = { shares: table.map((row) => row.map((count) => count / n)), weights, c }
  const { rows, columns } = marginsOf(all.shares)
  const observed = over(all, (i, j) => at(all.shares, i, j))
  const expected = over(all, (i, j) => (rows[i] ?? 0) * (columns[j] ?? 0))
  if (1 - expected < 1e-14) return because('no_variance')
  const value = (observed - expected) / (1 - expected)
  const { standardError, underChance } = errorsOf(all, observed, expected, n)
  const half = (normalQuantile(0.975) ?? 0) * standardError
  const z = underChance === 0 ? null : value / underChance
  const p = z === null ? null : 2 * normalUpper(Math.abs(z))
  return { value, n, observed, expected, standardError, interval: [value - half, value + half], z, p }
}

interface Weighted {
  readonly shares: readonly (readonly number[])[]
  readonly weights: readonly (readonly number[])[]
  readonly c: number
}

const at = (matrix: readonly (readonly number[])[], i: number, j: number): number => matrix[i]?.[j] ?? 0

const range = (length: number): number[] => Array.from({ length }, (_, index) => index)

const over = ({ weights, c }: Weighted, share: (i: number, j: number) => number): number =>
  sum(range(c).flatMap((i) => range(c).map((j) => at(weights, i, j) * share(i, j))))

function marginsOf(shares: readonly (readonly number[])[]) {
  const rows = shares.map(sum)
  const columns = shares.map((_, j) => sum(shares.map((row) => row[j] ?? 0)))
  return { rows, columns }
}

function errorsOf(all: Weighted, observed: number, expected: number, n: number) {
  const { shares, weights, c } = all
  const { rows, columns } = marginsOf(shares)
  const a = range(c).map((i) => sum(range(c).map((j) => at(weights, i, j) * (columns[j] ?? 0))))
  const b = range(c).map((j) => sum(range(c).map((i) => at(weights, i, j) * (rows[i] ?? 0))))
  const cells = range(c).flatMap((i) => range(c).map((j) => [i, j] as const))
  const both = (i: number, j: number): number => (a[i] ?? 0) + (b[j] ?? 0)
  const seen = sum(
    cells.map(
      ([i, j]) => at(shares, i, j) * (at(weights, i, j) * (1 - expected) - both(i, j) * (1 - observed)) ** 2,
    ),
  )
  const variance = (seen - (observed * expected - 2 * expected + observed) ** 2) / (n * (1 - expected) ** 4)
  const chance = sum(
    cells.map(([i, j]) => (rows[i] ?? 0) * (columns[j] ?? 0) * (at(weights, i, j) - both(i, j)) ** 2),
  )
  const chanceVariance = (chance - expected ** 2) / (n * (1 - expected) ** 2)
  return { standardError: rootOfVariance(variance), underChance: rootOfVariance(chanceVariance) }
}

const rootOfVariance = (variance: number): number => (variance < NO_VARIANCE ? 0 : Math.sqrt(variance))

export interface FleissKappa {
  readonly value: number
  readonly n: number
  readonly raters: number
  /** Test of no agreement beyond chance; its standard error is not for an interval. */
  readonly z: number | null
  readonly p: number | null
}

/**
 * Kappa of several raters on unordered categories: Fleiss 1971, Psychol Bull 76:378; the test: Fleiss, Nee & Landis
 * 1979, Psychol Bull 86:974. Undefined where subjects have unlike numbers of ratings, or fewer than two.
 * @param table a row a subject: how many raters chose each category
 */
export function fleissKappa(table: readonly (readonly number[])[]): FleissKappa | Undefined {
  const n = table.length
  const raters = sum(table[0] ?? [])
  if (n === 0 || raters < 2) return because('too_few')
  if (table.some((row) => sum(row) !== raters || row.length !== table[0]?.length))
    return because('unlike_length')
  if (!table.flat().every((count) => Number.isInteger(count) && count >= 0)) return because('out_of_range')
  const shares = (table[0] ?? []).map((_, j) => sum(table.map((row) => row[j] ?? 0)) / (n * raters))
  const expected = sum(shares.map((share) => share * share))
  if (1 - expected < 1e-14) return because('no_variance')
  const agreeing = sum(table.map((row) => sum(row.map((count) => count * (count - 1)))))
  const observed = agreeing / (n * raters * (raters - 1))
  const value = (observed - expected) / (1 - expected)
  const spread = sum(shares.map((p) => p * (1 - p)))
  const skew = sum(shares.map((p) => p * (1 - p) * (1 - 2 * p)))
  const variance = ((2 / (n * raters * (raters - 1))) * (spread ** 2 - skew)) / spread ** 2
  const error = rootOfVariance(variance)
  const z = error === 0 ? null : value / error
  return { value, n, raters, z, p: z === null ? null : 2 * normalUpper(Math.abs(z)) }
}
