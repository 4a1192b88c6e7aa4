/** Which clients a row of a norm table is for, and what a table as a whole covers. */
import type { Draft } from '../convert/draft.ts'
import type { Norm, NormRow } from '../model.ts'
import type { PlacedRow } from './table.ts'

/** Rows of one norm's table, or of all tables, each table once. */
export function rowsOf(draft: Draft, norm: Norm | null = null): readonly PlacedRow[] {
  const files = norm ? [norm.file] : [...new Set(draft.norms.map(({ file }) => file))]
  return files.flatMap((file) => draft.normTable(file).rows)
}

/** Whether some client falls into both: a row for `any` sex or hand meets every other. */
export function overlap(a: NormRow, b: NormRow): boolean {
  const sex = a.sex === b.sex || a.sex === 'any' || b.sex === 'any'
  return sex && handsMeet(a.hand, b.hand) && first(a) <= last(b) && first(b) <= last(a)
}

/**
 * Side and dominance are two ways to group hands that one table may use side by side (a row for the right and
 * one for the dominant hand); each way is a partition of its own.
 */
function handsMeet(a: NormRow['hand'], b: NormRow['hand']): boolean {
  return a === b || a === 'any' || b === 'any'
}

const first = ({ ageMin }: NormRow): number => ageMin ?? Number.NEGATIVE_INFINITY
const last = ({ ageMax }: NormRow): number => ageMax ?? Number.POSITIVE_INFINITY

export interface Gap {
  /** The stratum before it. */
  readonly after: PlacedRow
  /** Completed years, both included. */
  readonly from: number
  readonly until: number
}

/** Ages that are missing between two strata of the same sex and hand. */
export function gapsAmong(rows: readonly PlacedRow[]): readonly Gap[] {
  if (rows.some(({ row }) => first(row) > last(row))) return []
  const groups = Map.groupBy(rows, ({ row }) => `${row.sex} ${row.hand}`)
  return [...groups.values()].flatMap((group) => {
    const sorted = [...group].sort((a, b) => first(a.row) - first(b.row))
    return sorted.flatMap((after, index): readonly Gap[] => {
      const next = sorted[index + 1]
      const from = last(after.row) + 1
      const until = next ? first(next.row) - 1 : Number.NEGATIVE_INFINITY
      return from <= until ? [{ after, from, until }] : []
    })
  })
}
