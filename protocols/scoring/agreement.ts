/** How well raters agree on the same subjects: what a table of their values says. */
import { type BlandAltman, blandAltman } from './statistics/bland-altman.ts'
import {
  errorsOfMeasurement,
  type IntraclassTable,
  intraclass,
  type MeanSquares,
} from './statistics/intraclass.ts'
import {
  type FleissKappa,
  fleissKappa,
  KAPPA_WEIGHTS,
  type Kappa,
  type KappaWeights,
  kappa,
  weightsFor,
} from './statistics/kappa.ts'
import { detectableChange } from './statistics/measurement-error.ts'
import { because, isUndefined, type Undefined } from './statistics/undefined.ts'

export interface Ratings<T> {
  readonly raters: readonly string[]
  /** A row a subject, a column a rater, without gaps. */
  readonly rows: readonly (readonly T[])[]
}

/** A standard error of measurement with what follows from it, all in the unit of the table. */
interface MeasuredError {
  /** `agreement` holds the raters' own differences as error too; `consistency` leaves them out. */
  readonly kind: 'agreement' | 'consistency'
  readonly sem: number
  readonly mdc90: number
  readonly mdc95: number
}

export interface NumbersAgreement {
  readonly intraclass: IntraclassTable
  readonly errors: readonly MeasuredError[]
  /** Every two raters, first less second. */
  readonly limits: readonly { readonly raters: readonly [string, string]; readonly found: BlandAltman }[]
}

/** Raters who gave numbers. Undefined as intraclass correlations are: too few subjects or raters, no variance. */
export function numbersAgreement({ raters, rows }: Ratings<number>): NumbersAgreement | Undefined {
  const table = intraclass(rows)
  if (isUndefined(table)) return table
  const limits = pairsOf(raters).flatMap(({ first, second, names }) => {
    const found = blandAltman(columnOf(rows, first), columnOf(rows, second))
    return isUndefined(found) ? [] : [{ raters: names, found }]
  })
  return { intraclass: table, errors: errorsFrom(table.squares), limits }
}

function errorsFrom(squares: MeanSquares): MeasuredError[] {
  const { agreement, consistency } = errorsOfMeasurement(squares)
  const kinds = [
    ['agreement', agreement],
    ['consistency', consistency],
  ] as const
  return kinds.flatMap(([kind, sem]) => {
    const mdc90 = detectableChange(sem, 0.9)
    const mdc95 = detectableChange(sem, 0.95)
    return typeof mdc90 === 'number' && typeof mdc95 === 'number' ? [{ kind, sem, mdc90, mdc95 }] : []
  })
}

export interface GradesAgreement {
  readonly categories: readonly string[]
  /** Every two raters; weighted kappas take the categories in their order. */
  readonly pairs: readonly {
    readonly raters: readonly [string, string]
    /** Share of subjects to whom both gave the same. */
    readonly same: number
    readonly kappas: readonly { readonly weights: KappaWeights; readonly found: Kappa | Undefined }[]
  }[]
  /** All raters at once, categories without order; null for two raters. */
  readonly together: FleissKappa | Undefined | null
}

/**
 * Raters who gave categories. Undefined for no subjects, fewer than two raters, and a grade that is none of the
 * categories (`out_of_range`).
 * @param categories all that could be given, in order, also those nobody gave
 */
export function gradesAgreement(
  { raters, rows }: Ratings<string>,
  categories: readonly string[],
): GradesAgreement | Undefined {
  if (rows.length === 0 || raters.length < 2) return because('too_few')
  if (rows.some((row) => row.some((grade) => !categories.includes(grade)))) return because('out_of_range')
  const pairs = pairsOf(raters).map(({ first, second, names }) => {
    const table = categories.map((one) =>
      categories.map((other) => rows.filter((row) => row[first] === one && row[second] === other).length),
    )
    const same = rows.filter((row) => row[first] === row[second]).length / rows.length
    const kappas = KAPPA_WEIGHTS.map((weights) => ({
      weights,
      found: kappa(table, weightsFor(weights, categories.length)),
    }))
    return { raters: names, same, kappas }
  })
  const counts = rows.map((row) => categories.map((each) => row.filter((grade) => grade === each).length))
  return { categories, pairs, together: raters.length > 2 ? fleissKappa(counts) : null }
}

const columnOf = (rows: readonly (readonly number[])[], at: number): number[] =>
  rows.map((row) => row[at] ?? Number.NaN)

function pairsOf(raters: readonly string[]) {
  return raters.flatMap((one, first) =>
    raters
      .slice(first + 1)
      .map((other, after) => ({ first, second: first + 1 + after, names: [one, other] as const })),
  )
}
