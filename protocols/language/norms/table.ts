/**
 * A norm table as it lies beside the protocol: `sex,age_min,age_max,hand,n,mean,sd,provenance`, one stratum a
 * row; ages in completed years with both ends included, an empty cell for what is open or not stated.
 */
import type { Range } from '../diagnostics.ts'
import { nearest } from '../expressions/nearest.ts'
import type { NormRow } from '../model.ts'
import { MOST_CHARACTERS } from '../reader/limits.ts'
import { type Cell, type Csv, type CsvRow, readCsv } from './csv.ts'

export const COLUMNS = ['sex', 'age_min', 'age_max', 'hand', 'n', 'mean', 'sd', 'provenance'] as const
export type Column = (typeof COLUMNS)[number]

/** What is wrong with a table, told by the check of the same name. */
export type TableFault =
  | { readonly is: 'norm_table_missing'; readonly at: Range | null }
  | { readonly is: 'norm_table_empty'; readonly at: Range }
  | { readonly is: 'norm_table_syntax'; readonly at: Range; readonly message: string }
  | { readonly is: 'norm_column_missing'; readonly at: Range; readonly column: string }
  | { readonly is: 'norm_column_unknown'; readonly at: Range; readonly column: string }
  | { readonly is: 'norm_column_twice'; readonly at: Range; readonly column: string }
  | { readonly is: 'norm_row_length'; readonly at: Range; readonly cells: number; readonly columns: number }
  | {
      readonly is: 'norm_value_unreadable'
      readonly at: Range
      readonly column: Column
      readonly text: string
    }

export interface PlacedRow {
  readonly row: NormRow
  readonly at: Range
  readonly cells: Readonly<Partial<Record<Column, Range>>>
}

export interface NormTable {
  readonly file: string
  readonly rows: readonly PlacedRow[]
  readonly faults: readonly TableFault[]
}

export function readNormTable(file: string, text: string | undefined): NormTable {
  if (text === undefined) return { file, rows: [], faults: [{ is: 'norm_table_missing', at: null }] }
  if (text.length > MOST_CHARACTERS) return { file, rows: [], faults: [] }
  const csv = readCsv(file, text)
  const [header, ...rows] = csv.rows
  const faults: TableFault[] = csv.fault ? [{ is: 'norm_table_syntax', ...csv.fault }] : []
  if (!header || rows.length === 0) {
    if (!csv.fault) faults.push({ is: 'norm_table_empty', at: header?.at ?? { file, start: 0, end: 0 } })
    return { file, rows: [], faults }
  }
  const inHeader = [...headerFaults(header)]
  faults.push(...inHeader)
  if (inHeader.length > 0 || csv.fault) return { file, rows: [], faults }
  const columns = header.cells.map(({ text: name }) => name as Column)
  return { file, rows: rows.flatMap((row) => placedRow(columns, row, faults)), faults }
}

function* headerFaults(header: Csv['rows'][number]): Iterable<TableFault> {
  const names = header.cells.map(({ text }) => text)
  const free = COLUMNS.filter((column) => !names.includes(column))
  const misspelt = new Set<string | null>()
  for (const [index, { text, at }] of header.cells.entries()) {
    if (!(COLUMNS as readonly string[]).includes(text)) {
      misspelt.add(nearest(text, free))
      yield { is: 'norm_column_unknown', at, column: text }
    } else if (names.indexOf(text) < index) yield { is: 'norm_column_twice', at, column: text }
  }
  for (const column of free) {
    if (!misspelt.has(column)) yield { is: 'norm_column_missing', at: header.at, column }
  }
}

const SEXES = ['F', 'M', 'any'] as const
const HANDS = ['right', 'left', 'dominant', 'nondominant', 'any'] as const
const PROVENANCES = ['seen', 'memory'] as const

const READERS = {
  sex: (text: string) => oneOf(text, SEXES),
  hand: (text: string) => oneOf(text, HANDS),
  provenance: (text: string) => oneOf(text, PROVENANCES),
  age_min: (text: string) => numberIn(text, /^\d{1,3}$/),
  age_max: (text: string) => numberIn(text, /^\d{1,3}$/),
  n: (text: string) => numberIn(text, /^[1-9]\d{0,8}$/),
  mean: (text: string) => numberIn(text, /^-?\d{1,9}(\.\d{1,9})?$/),
  sd: (text: string) => numberIn(text, /^\d{1,9}(\.\d{1,9})?$/),
} satisfies Readonly<Record<Column, (text: string) => unknown>>

function placedRow(columns: readonly Column[], csv: CsvRow, faults: TableFault[]): readonly PlacedRow[] {
  if (csv.cells.length !== columns.length) {
    faults.push({ is: 'norm_row_length', at: csv.at, cells: csv.cells.length, columns: columns.length })
    return []
  }
  const cells: Partial<Record<Column, Range>> = {}
  const texts = new Map<Column, Cell>()
  for (const [index, column] of columns.entries()) {
    const cell = csv.cells[index]
    if (!cell) continue
    cells[column] = cell.at
    texts.set(column, cell)
  }
  const before = faults.length
  /** Null for an empty cell, and for one that can't be read, which is kept as a fault. */
  function read<Value>(column: Column, reader: (text: string) => Value | undefined): Value | null {
    const cell = texts.get(column)
    const value = reader(cell?.text ?? '')
    if (value !== undefined) return value
    faults.push({ is: 'norm_value_unreadable', at: cell?.at ?? csv.at, column, text: cell?.text ?? '' })
    return null
  }
  const row: NormRow = {
    sex: read('sex', READERS.sex) ?? 'any',
    ageMin: read('age_min', READERS.age_min),
    ageMax: read('age_max', READERS.age_max),
    hand: read('hand', READERS.hand) ?? 'any',
    chosenBy: {},
    n: read('n', READERS.n),
    mean: read('mean', READERS.mean),
    sd: read('sd', READERS.sd),
    percentiles: [],
    lms: null,
    cutOff: null,
    band: null,
    provenance: read('provenance', READERS.provenance) ?? 'memory',
    line: csv.line,
  }
  return faults.length === before ? [{ row, at: csv.at, cells }] : []
}

/** Undefined where the text is none of the words. */
function oneOf<Word extends string>(text: string, words: readonly Word[]): Word | undefined {
  return words.find((word) => word === text)
}

/** Null for an empty cell; undefined where the text has not that form. */
function numberIn(text: string, form: RegExp): number | null | undefined {
  if (text === '') return null
  return form.test(text) ? Number(text) : undefined
}
