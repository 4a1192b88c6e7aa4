/**
 * Intraclass correlations of a table of n subjects by k raters: Shrout & Fleiss 1979, Psychol Bull 86:420; McGraw &
 * Wong 1996, Psychol Methods 1:30. Negative estimates are given as they are: no reliability beyond chance.
 */
import { areFinite, isNoSpread, squaresAbout, sum } from './descriptive.ts'
import { fQuantile, fUpper } from './fisher-f.ts'
import { because, type Interval, type Undefined, type Why } from './undefined.ts'

/** Shrout & Fleiss's names: 1 raters differ by subject, 2 agreement, 3 consistency; one rater, or the mean of k. */
export const INTRACLASS_FORMS = ['1,1', '2,1', '3,1', '1,k', '2,k', '3,k'] as const
export type IntraclassForm = (typeof INTRACLASS_FORMS)[number]

interface Intraclass {
  readonly value: number | null
  /** Why there is no value; null where there is one. */
  readonly why: Why | null
  readonly interval: Interval
  /** F test of no reliability at all; null where the error is zero. */
  readonly f: { readonly value: number; readonly df1: number; readonly df2: number } | null
  readonly p: number | null
}

/** Of a two-way analysis of variance without repeats. */
export interface MeanSquares {
  readonly n: number
  readonly k: number
  readonly subjects: number
  readonly raters: number
  readonly residual: number
  /** Within subjects: raters and residual together. */
  readonly within: number
}

export interface IntraclassTable {
  readonly squares: MeanSquares
  readonly forms: Readonly<Record<IntraclassForm, Intraclass>>
}

/**
 * All six forms. Undefined for fewer than two subjects or raters, rows of unlike length, values that are no numbers,
 * and a table without any variance.
 * @param table a row a subject, a column a rater, without gaps
 */
export function intraclass(table: readonly (readonly number[])[]): IntraclassTable | Undefined {
  const squares = meanSquares(table)
  if ('undefined' in squares) return squares
  const { n, k, subjects: b, raters: j, residual: e, within: w } = squares
  if (b === 0 && w === 0) return because('no_variance')
  const one = byRatio(squares, w, n * (k - 1))
  const three = byRatio(squares, e, (n - 1) * (k - 1))
  const test = testOf(b, e, n - 1, (n - 1) * (k - 1))
  const single = ratio(b - e, b + (k - 1) * e + (k * (j - e)) / n)
  const singleInterval: Interval = single === null ? [null, null] : agreementInterval(squares, single)
  const average = ratio(b - e, b + (j - e) / n)
  const [low, high] = singleInterval
  return {
    squares,
    forms: {
      '1,1': one.single,
      '1,k': one.average,
      '2,1': answer(single, singleInterval, test),
      '2,k': answer(average, [steppedUp(low, k), steppedUp(high, k)], test),
      '3,1': three.single,
      '3,k': three.average,
    },
  }
}

/** Mean squares; those that are nothing but rounding are exactly 0. */
function meanSquares(table: readonly (readonly number[])[]): MeanSquares | Undefined {
  const n = table.length
  const k = table[0]?.length ?? 0
  if (n < 2 || k < 2) return because('too_few')
  if (table.some((row) => row.length !== k)) return because('unlike_length')
  const all = table.flat()
  if (!areFinite(all)) return because('not_finite')
  const grand = sum(all) / (n * k)
  const ofSubjects = table.map((row) => sum(row) / k)
  const ofRaters = Array.from({ length: k }, (_, rater) => sum(table.map((row) => row[rater] ?? 0)) / n)
  const residuals = table.map((row, subject) =>
    row.map((value, rater) => value - (ofSubjects[subject] ?? 0) - (ofRaters[rater] ?? 0) + grand),
  )
  const kept = (squares: number): number => (isNoSpread(squares, all) ? 0 : squares)
  const subjects = kept(k * squaresAbout(ofSubjects, grand))
  const raters = kept(n * squaresAbout(ofRaters, grand))
  const residual = kept(squaresAbout(residuals.flat(), 0))
  return {
    n,
    k,
    subjects: subjects / (n - 1),
    raters: raters / (k - 1),
    residual: residual / ((n - 1) * (k - 1)),
    within: (raters + residual) / (n * (k - 1)),
  }
}

/**
 * Standard errors of measurement of one rater's value: `agreement` holds the raters' own differences as error too
 * (de Vet et al. 2006, J Clin Epidemiol 59:1033), `consistency` is the square root of the residual mean square.
 */
export function errorsOfMeasurement({ n, raters, residual }: MeanSquares) {
  return {
    agreement: Math.sqrt(Math.max(0, (raters - residual) / n) + residual),
    consistency: Math.sqrt(residual),
  }
}

interface Test {
  readonly f: Intraclass['f']
  readonly p: number
}

/** F of subjects over an error; without error it has no value and is certain. */
function testOf(b: number, error: number, df1: number, df2: number): Test {
  if (error === 0) return { f: null, p: b === 0 ? 1 : 0 }
  const value = b / error
  return { f: { value, df1, df2 }, p: fUpper(value, df1, df2) ?? 1 }
}

const answer = (value: number | null, interval: Interval, test: Test): Intraclass =>
  value === null
    ? { value, why: 'no_denominator', interval: [null, null], f: null, p: null }
    : { value, why: null, interval, ...test }

const ratio = (numerator: number, denominator: number): number | null =>
  denominator > 0 ? numerator / denominator : null

const averageOf = (f: number | null): number | null => (f === null || f === 0 ? null : 1 - 1 / f)

/** Forms 1 and 3: functions of the one ratio F, and so are their intervals. */
function byRatio({ n, k, subjects: b }: MeanSquares, error: number, df2: number) {
  const test = testOf(b, error, n - 1, df2)
  const single = ratio(b - error, b + (k - 1) * error)
  const average = ratio(b - error, b)
  if (test.f === null) {
    const sure: Interval = [1, 1]
    return { single: answer(single, sure, test), average: answer(average, sure, test) }
  }
  const { value: f, df1 } = test.f
  const low = fQuantile(0.975, df1, df2)
  const high = fQuantile(0.975, df2, df1)
  const bounds = [low === null ? null : f / low, high === null ? null : f * high] as const
  const singleOf = (bound: number | null) => (bound === null ? null : (bound - 1) / (bound + k - 1))
  return {
    single: answer(single, [singleOf(bounds[0]), singleOf(bounds[1])], test),
    average: answer(average, [averageOf(bounds[0]), averageOf(bounds[1])], test),
  }
}

/**
 * Of form 2,1, by Satterthwaite's degrees of freedom (Shrout & Fleiss 1979, p. 424, after Fleiss & Shrout 1978,
 * Psychometrika 43:259), written so that an error of zero leaves it finite.
 */
function agreementInterval({ n, k, subjects: b, raters: j, residual: e }: MeanSquares, r: number): Interval {
  const first = k * r * j
  const second = (n * (1 + (k - 1) * r) - k * r) * e
  const below = (n - 1) * first ** 2 + second ** 2
  if (below === 0) return [1, 1]
  const v = ((k - 1) * (n - 1) * (first + second) ** 2) / below
  const c = k * j + (k * n - k - n) * e
  const f1 = fQuantile(0.975, n - 1, v)
  const f2 = fQuantile(0.975, v, n - 1)
  // Divided by the quantiles: of few degrees of freedom they pass all doubles, and the bounds have a limit there.
  const low = f1 === null ? null : ratio(n * (b / f1 - e), c + (n * b) / f1)
  const high = f2 === null ? null : ratio(n * (b - e / f2), c / f2 + n * b)
  return [low, high]
}

/** Spearman and Brown: from one rater to the mean of k. */
const steppedUp = (bound: number | null, k: number): number | null =>
  bound === null ? null : ratio(k * bound, 1 + (k - 1) * bound)
