/** Which clients a row of a norm table is for, and what a table as a whole covers. */
import type { Draft } from '../convert/draft.ts'
import type { Norm, NormCell, NormRow } from '../model.ts'
import type { PlacedRow } from './table.ts'

/** Rows of one norm's table, or of all tables, each table once. */
export function rowsOf(draft: Draft, norm: Norm | null = null): readonly PlacedRow[] {
  const tables = new Set((norm ? [norm] : draft.norms).map((each) => draft.normTable(each)))
  return [...tables].flatMap(({ rows }) => rows)
}

/** Norms with the rows of their tables, each table once. */
export function tablesOf(
  draft: Draft,
): readonly { readonly norm: Norm; readonly rows: readonly PlacedRow[] }[] {
  const told = new Set<object>()
  return draft.norms.flatMap((norm) => {
    const table = draft.normTable(norm)
    if (told.has(table)) return []
    told.add(table)
    return [{ norm, rows: table.rows }]
  })
}

/** Whether some client falls into both: a row for `any` sex or hand meets every other. */
export function overlap(a: NormRow, b: NormRow): boolean {
  const sex = a.sex === b.sex || a.sex === 'any' || b.sex === 'any'
  return sex && handsMeet(a.hand, b.hand) && chosenMeet(a, b) && meet(ages(a), ages(b))
}

/**
 * Side and dominance are two ways to group hands that one table may use side by side (a row for the right and
 * one for the dominant hand); each way is a partition of its own.
 */
function handsMeet(a: NormRow['hand'], b: NormRow['hand']): boolean {
  return a === b || a === 'any' || b === 'any'
}

function chosenMeet(a: NormRow, b: NormRow): boolean {
  return Object.entries(a.chosenBy).every(([column, cell]) => {
    const other = b.chosenBy[column]
    if (!other || cell.is !== other.is) return !other
    if (cell.is === 'word') return other.is === 'word' && cell.word === other.word
    return other.is === 'range' && meet(span(cell), span(other))
  })
}

/** Both ends included. */
interface Span {
  readonly first: number
  readonly last: number
}

const meet = (a: Span, b: Span): boolean => a.first <= b.last && b.first <= a.last
const ages = ({ ageMin, ageMax }: NormRow): Span => span({ from: ageMin, to: ageMax })
const span = ({ from, to }: { readonly from: number | null; readonly to: number | null }): Span => ({
  first: from ?? Number.NEGATIVE_INFINITY,
  last: to ?? Number.POSITIVE_INFINITY,
})

export interface Gap {
  /** What is missing: `age`, or the column of a range. */
  readonly of: string
  /** The stratum before it. */
  readonly after: PlacedRow
  /** Whole numbers, both included. */
  readonly from: number
  readonly until: number
}

/** Ages, and numbers of a choosing column, that are missing between two strata that are alike otherwise. */
export function gapsAmong(rows: readonly PlacedRow[]): readonly Gap[] {
  const columns = new Set(
    rows.flatMap(({ row }) => Object.keys(row.chosenBy).filter((column) => rangeIn(row, column) !== null)),
  )
  const missing = [...columns].flatMap((column) => gapsOf(rows, column, (row) => rangeIn(row, column)))
  return [...gapsOf(rows, 'age', ages), ...missing]
}

function rangeIn(row: NormRow, column: string): Span | null {
  const cell: NormCell | undefined = row.chosenBy[column]
  return cell?.is === 'range' ? span(cell) : null
}

function gapsOf(
  rows: readonly PlacedRow[],
  of: string,
  spanOf: (row: NormRow) => Span | null,
): readonly Gap[] {
  const spanned = rows.flatMap((placed) => {
    const found = spanOf(placed.row)
    return found ? [{ placed, ...found }] : []
  })
  if (spanned.some(({ first, last }) => first > last)) return []
  const groups = Map.groupBy(spanned, ({ placed }) => likeness(placed.row, of))
  return [...groups.values()].flatMap((group) => {
    const sorted = [...group].sort((a, b) => a.first - b.first || a.last - b.last)
    return sorted.flatMap(({ placed: after, last }, index): readonly Gap[] => {
      const from = last + 1
      const until = (sorted[index + 1]?.first ?? Number.NEGATIVE_INFINITY) - 1
      return from <= until ? [{ of, after, from, until }] : []
    })
  })
}

/** All that tells a stratum from others, apart from one column. */
function likeness({ sex, hand, ageMin, ageMax, chosenBy }: NormRow, but: string): string {
  const years = but === 'age' ? [] : [ageMin, ageMax]
  const cells = Object.entries(chosenBy).filter(([column]) => column !== but)
  return JSON.stringify([sex, hand, ...years, ...cells.toSorted(([a], [b]) => (a < b ? -1 : 1))])
}
