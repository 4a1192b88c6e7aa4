/** Which rows of a norm table somebody may belong to. Nothing is guessed: what isn't known rules nothing out. */
import type { AgeRange } from '../age.ts'
import type { Side } from '../client.ts'
import type { NormRow } from '../language/model.ts'
import { type Chosen, fitsCell } from './choosing.ts'

export interface Person {
  /** Completed years on the day; null: not known. */
  readonly age: AgeRange | null
  /** True where the birth as recorded comes after the day. */
  readonly isAgeImpossible: boolean
  readonly sex: 'F' | 'M' | 'unknown'
  /** Null: not known, or not one of the two. */
  readonly dominant: Side | null
}

/** What the table's own columns hold here, by their names. */
export type ChosenBy = ReadonlyMap<string, Chosen>

export interface Strata {
  readonly rows: readonly NormRow[]
  /** Why there are none. */
  readonly none: 'out_of_range' | 'no_row' | null
  /** Ages that the table has for this sex and hand, in completed years; null: open. */
  readonly ages: { readonly from: number | null; readonly to: number | null } | null
  /** True where some of what the person may be has no row. */
  readonly isPartly: boolean
}

const covers = (row: NormRow, age: number): boolean =>
  (row.ageMin === null || age >= row.ageMin) && (row.ageMax === null || age <= row.ageMax)

const isOfAge = (row: NormRow, age: AgeRange | null): boolean =>
  age === null ||
  ((row.ageMin === null || age.to >= row.ageMin) && (row.ageMax === null || age.from <= row.ageMax))

const isOfSex = (row: NormRow, sex: Person['sex']): boolean =>
  row.sex === 'any' || sex === 'unknown' || row.sex === sex

/** `hand`: the hand that the score is of; null: of no single hand. */
function isOfHand(row: NormRow, hand: Side | null, dominant: Side | null): boolean {
  if (row.hand === 'any') return true
  if (hand === null) return false
  if (row.hand === 'right' || row.hand === 'left') return row.hand === hand
  return dominant === null || (hand === dominant) === (row.hand === 'dominant')
}

const isChosen = (row: NormRow, chosen: ChosenBy): boolean =>
  Object.entries(row.chosenBy).every(([column, cell]) => fitsCell(cell, chosen.get(column) ?? null))

export function strataOf(
  table: readonly NormRow[],
  person: Person,
  { hand, chosen }: { readonly hand: Side | null; readonly chosen: ChosenBy },
): Strata {
  const ofPerson = table.filter(
    (row) => isOfSex(row, person.sex) && isOfHand(row, hand, person.dominant) && isChosen(row, chosen),
  )
  const rows = ofPerson.filter((row) => isOfAge(row, person.age))
  const ages = ofPerson.length === 0 ? null : agesOf(ofPerson)
  const none =
    rows.length > 0 ? null : ages !== null && isBeyond(person.age, ages) ? 'out_of_range' : 'no_row'
  return { rows, none, ages, isPartly: rows.length > 0 && isPartly(rows, person) }
}

function agesOf(rows: readonly NormRow[]): { from: number | null; to: number | null } {
  const lowest = rows.map(({ ageMin }) => ageMin)
  const highest = rows.map(({ ageMax }) => ageMax)
  return {
    from: lowest.includes(null) ? null : Math.min(...lowest.map(Number)),
    to: highest.includes(null) ? null : Math.max(...highest.map(Number)),
  }
}

const isBeyond = (age: AgeRange | null, { from, to }: { from: number | null; to: number | null }): boolean =>
  age !== null && ((from !== null && age.to < from) || (to !== null && age.from > to))

/** Whether an age, or a sex, that the person may have has no row among these. */
function isPartly(rows: readonly NormRow[], { age, sex }: Person): boolean {
  const sexes = sex === 'unknown' ? (['F', 'M'] as const) : [sex]
  return sexes.some((one) => {
    const ofSex = rows.filter((row) => isOfSex(row, one))
    if (age === null) return ofSex.length === 0
    for (let years = age.from; years <= age.to; years++)
      if (!ofSex.some((row) => covers(row, years))) return true
    return false
  })
}
