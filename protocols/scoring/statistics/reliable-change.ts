/**
 * Whether a difference of two values of one person is more than the error of the measurement explains. Each method
 * is named with what it gives, since they differ. Values, means and SDs are in one unit; a reliability r lies between
 * 0 and 1. Undefined where the error is zero (`no_variance`) or an input is impossible (`out_of_range`).
 */
import { normalUpper } from './normal.ts'
import { tUpper } from './student-t.ts'
import { because, type Undefined, type Why } from './undefined.ts'

export interface ReliableChange {
  readonly method:
    | 'plain'
    | 'practice-adjusted, error of the first'
    | 'practice-adjusted, errors of both'
    | 'practice-adjusted, spread of differences'
    | 'regression'
    | 'regression, small sample'
  /** How far the second value lies from the expected one, in that unit. */
  readonly difference: number
  /** What it is divided by. */
  readonly standardError: number
  /** A normal deviate; for `regression, small sample` a t with `df`. */
  readonly index: number
  readonly df: number | null
  /** Two-sided. */
  readonly p: number
}

export interface Pair {
  readonly first: number
  readonly second: number
}

/** How a group without real change fared at both times: what practice gives, and how the two times go together. */
export interface Retest {
  readonly mean1: number
  readonly sd1: number
  readonly mean2: number
  readonly sd2: number
  /** Correlation of the two times. */
  readonly r: number
}

/**
 * (second - first) / (SD sqrt(2 (1 - r))): Jacobson & Truax 1991, J Consult Clin Psychol 59:12. Takes no account of
 * practice.
 */
export function plainChange(pair: Pair, sd: number, r: number): ReliableChange | Undefined {
  const why = faultIn([pair.first, pair.second], [sd], r)
  if (why !== null) return because(why)
  return indexed('plain', pair.second - pair.first, sd * Math.sqrt(2 * (1 - r)))
}

const ERRORS = {
  /** Chelune et al. 1993, Neuropsychology 7:41: the error of the first time at both. */
  first: ({ sd1, r }: Retest) => sd1 * Math.sqrt(2 * (1 - r)),
  /** Iverson 2001, Arch Clin Neuropsychol 16:183: each time with its own error. */
  both: ({ sd1, sd2, r }: Retest) => Math.hypot(sd1, sd2) * Math.sqrt(1 - r),
  /** Temkin et al. 1999, J Int Neuropsychol Soc 5:357: the spread of the group's own differences. */
  differences: ({ sd1, sd2, r }: Retest) =>
    Math.sqrt(Math.max(0, (sd1 - sd2) ** 2 + 2 * sd1 * sd2 * (1 - r))),
} as const

const NAMES = {
  first: 'practice-adjusted, error of the first',
  both: 'practice-adjusted, errors of both',
  differences: 'practice-adjusted, spread of differences',
} as const

/** The difference less what practice gives (mean2 - mean1), over an error as `by` says; `both` where nothing else is asked. */
export function practiceAdjustedChange(
  pair: Pair,
  retest: Retest,
  by: keyof typeof ERRORS = 'both',
): ReliableChange | Undefined {
  const { mean1, mean2, sd1, sd2, r } = retest
  const why = faultIn([pair.first, pair.second, mean1, mean2], [sd1, sd2], r)
  if (why !== null) return because(why)
  return indexed(NAMES[by], pair.second - pair.first - (mean2 - mean1), ERRORS[by](retest))
}

/**
 * The second value against the one that regression on the first expects. Without `n` by the standard error of
 * estimate sd2 sqrt(1 - r²) (McSweeny et al. 1993, Clin Neuropsychol 7:300); with the size of the group by the error
 * of predicting one new case, t with n - 2 degrees of freedom (Crawford & Howell 1998, J Clin Exp Neuropsychol
 * 20:755): to be preferred wherever n is known. Undefined for a group of fewer than three.
 */
export function regressionChange(
  { first, second }: Pair,
  { mean1, mean2, sd1, sd2, r }: Retest,
  n: number | null,
): ReliableChange | Undefined {
  const why = faultIn([first, second, mean1, mean2], [sd1, sd2], r)
  if (why !== null) return because(why)
  if (sd1 === 0) return because('no_variance')
  if (n !== null && !(n >= 3)) return because('too_few')
  const away = first - mean1
  const difference = second - mean2 - ((r * sd2) / sd1) * away
  const error = sd2 * Math.sqrt((1 - r) * (1 + r))
  if (n === null) return indexed('regression', difference, error)
  const residual = error * Math.sqrt((n - 1) / (n - 2))
  const predicted = residual * Math.sqrt(1 + 1 / n + away ** 2 / ((n - 1) * sd1 ** 2))
  return indexed('regression, small sample', difference, predicted, n - 2)
}

function faultIn(values: readonly number[], sds: readonly number[], r: number): Why | null {
  if (![...values, ...sds, r].every(Number.isFinite)) return 'not_finite'
  return r < 0 || r > 1 || sds.some((sd) => sd < 0) ? 'out_of_range' : null
}

function indexed(
  method: ReliableChange['method'],
  difference: number,
  standardError: number,
  df: number | null = null,
): ReliableChange | Undefined {
  if (!(standardError > 0)) return because('no_variance')
  const index = difference / standardError
  const beyond = df === null ? normalUpper(Math.abs(index)) : (tUpper(Math.abs(index), df) ?? 0)
  return { method, difference, standardError, index, df, p: 2 * beyond }
}
