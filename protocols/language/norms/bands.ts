/** Bands and cut-offs of a norm table: which they name, and which values they hold. */
import type { NormRow } from '../model.ts'
import type { PlacedRow } from './table.ts'

/** Columns with the bands that a row names in them. */
export function bandsIn({ cutOff, band }: NormRow): readonly (readonly [column: string, id: string])[] {
  if (band) return [['band', band.id]]
  if (!cutOff) return []
  return [
    ['below', cutOff.below],
    ['above', cutOff.above],
  ]
}

const lowest = ({ band }: NormRow): number => band?.from ?? Number.NEGATIVE_INFINITY
const end = ({ band }: NormRow): number => band?.below ?? Number.POSITIVE_INFINITY

/** Whether some value lies in both. */
export function bandsMeet(a: NormRow, b: NormRow): boolean {
  return lowest(a) < end(b) && lowest(b) < end(a)
}

interface BandGap {
  readonly after: PlacedRow
  /** From this value on, and below that one. */
  readonly from: number
  readonly below: number
}

/** Values that no band of a stratum holds, though lower and higher ones have one. */
export function bandGaps(rows: readonly PlacedRow[]): readonly BandGap[] {
  const banded = rows.filter(({ row }) => row.band !== null)
  if (banded.some(({ row }) => lowest(row) >= end(row))) return []
  const strata = Map.groupBy(banded, ({ row: { sex, hand, ageMin, ageMax, chosenBy } }) =>
    JSON.stringify([sex, hand, ageMin, ageMax, chosenBy]),
  )
  return [...strata.values()].flatMap((stratum) => {
    const sorted = [...stratum].sort((a, b) => lowest(a.row) - lowest(b.row))
    return sorted.flatMap((after, index): readonly BandGap[] => {
      const next = sorted[index + 1]
      const [from, below] = [end(after.row), next ? lowest(next.row) : Number.NEGATIVE_INFINITY]
      return from < below ? [{ after, from, below }] : []
    })
  })
}
