/**
 * A norm table as it lies beside the protocol, one stratum a row: `sex,age_min,age_max,hand,n`, what its kind
 * states (`mean,sd`), columns of the protocol's own that choose the row, and `provenance`. Ages are completed
 * years with both ends included; a cell is empty for what is open or not stated.
 */
import type { Range } from '../diagnostics.ts'
import { nearest } from '../expressions/nearest.ts'
import type { NormCell, NormColumn, NormKind, NormRow } from '../model.ts'
import { MOST_CHARACTERS } from '../reader/limits.ts'
import { type Choosers, type Column, columnsOf, rankOf } from './columns.ts'
import { type CsvRow, readCsv } from './csv.ts'

/** What is wrong with a table, told by the check of the same name. */
export type TableFault =
  | { readonly is: 'norm_table_missing'; readonly at: Range | null }
  | { readonly is: 'norm_table_empty'; readonly at: Range }
  | { readonly is: 'norm_table_syntax'; readonly at: Range; readonly message: string }
  | { readonly is: 'norm_column_missing'; readonly at: Range; readonly column: string }
  | {
      readonly is: 'norm_column_unknown'
      readonly at: Range
      readonly column: string
      readonly known: readonly string[]
    }
  | { readonly is: 'norm_column_twice'; readonly at: Range; readonly column: string }
  | { readonly is: 'norm_row_length'; readonly at: Range; readonly cells: number; readonly columns: number }
  | {
      readonly is: 'norm_value_unreadable'
      readonly at: Range
      readonly column: string
      readonly text: string
      readonly form: string
    }

export interface PlacedRow {
  readonly row: NormRow
  readonly at: Range
  /** Where the cell of a column stands. */
  readonly cells: Readonly<Partial<Record<string, Range>>>
}

export interface NormTable {
  readonly file: string
  readonly rows: readonly PlacedRow[]
  /** Its choosing columns, with where each stands in the header. */
  readonly columns: readonly (NormColumn & { readonly at: Range })[]
  readonly faults: readonly TableFault[]
}

/** What a table is read by. */
export interface TableForm {
  readonly kind: NormKind
  readonly choosers: Choosers
}

/** A table is never refused as a whole: what could be read of it is there, the rest are faults. */
export function readNormTable(file: string, text: string | undefined, form: TableForm): NormTable {
  const none = { file, rows: [], columns: [] }
  if (text === undefined) return { ...none, faults: [{ is: 'norm_table_missing', at: null }] }
  if (text.length > MOST_CHARACTERS) return { ...none, faults: [] }
  const csv = readCsv(file, text)
  const [header, ...rows] = csv.rows
  const faults: TableFault[] = csv.fault ? [{ is: 'norm_table_syntax', ...csv.fault }] : []
  if (!header || rows.length === 0) {
    if (!csv.fault) faults.push({ is: 'norm_table_empty', at: header?.at ?? { file, start: 0, end: 0 } })
    return { ...none, faults }
  }
  const names = header.cells.map(({ text: name }) => name)
  const known = columnsOf(form.kind, form.choosers, names)
  const inHeader = [...headerFaults(header, known, form.kind)]
  faults.push(...inHeader)
  if (inHeader.length > 0 || csv.fault) return { ...none, faults }
  const choosing = header.cells.flatMap(({ text: column, at }) => {
    const by = isChoosing(column, known, form) ? form.choosers.get(column) : undefined
    return by === undefined ? [] : [{ column, by, at }]
  })
  const reading = { names, known, choosing: choosing.map(({ column }) => column), faults }
  return { file, rows: rows.flatMap((row) => placedRow(row, reading)), columns: choosing, faults }
}

/** A loop that is called as one of the table's own columns doesn't take it over. */
function isChoosing(column: string, known: ReadonlyMap<string, Column>, { kind, choosers }: TableForm) {
  return choosers.has(column) && known.has(column) && !columnsOf(kind, new Map(), [column]).has(column)
}

const LEAST_PERCENTILES = 2

function* headerFaults(
  header: CsvRow,
  known: ReadonlyMap<string, Column>,
  kind: NormKind,
): Iterable<TableFault> {
  const names = header.cells.map(({ text }) => text)
  const free = [...known.keys()].filter((column) => !names.includes(column))
  const misspelt = new Set<string | null>()
  for (const [index, { text, at }] of header.cells.entries()) {
    if (!known.has(text)) {
      misspelt.add(nearest(text, free))
      yield { is: 'norm_column_unknown', at, column: text, known: [...known.keys()] }
    } else if (names.indexOf(text) < index) yield { is: 'norm_column_twice', at, column: text }
  }
  for (const column of free) {
    if (known.get(column)?.isNeeded && !misspelt.has(column))
      yield { is: 'norm_column_missing', at: header.at, column }
  }
  const ranks = names.filter((name) => rankOf(name) !== null).length
  if (kind === 'percentiles' && ranks < LEAST_PERCENTILES)
    yield { is: 'norm_column_missing', at: header.at, column: ranks === 0 ? 'p50' : 'p95' }
}

interface Reading {
  readonly names: readonly string[]
  readonly known: ReadonlyMap<string, Column>
  readonly choosing: readonly string[]
  readonly faults: TableFault[]
}

function placedRow(csv: CsvRow, { names, known, choosing, faults }: Reading): readonly PlacedRow[] {
  if (csv.cells.length !== names.length) {
    faults.push({ is: 'norm_row_length', at: csv.at, cells: csv.cells.length, columns: names.length })
    return []
  }
  const cells: Record<string, Range> = {}
  const values = new Map<string, unknown>()
  const before = faults.length
  for (const [index, name] of names.entries()) {
    const [cell, column] = [csv.cells[index], known.get(name)]
    if (!cell || !column) continue
    cells[name] = cell.at
    const value = column.read(cell.text)
    if (value !== undefined) values.set(name, value)
    else
      faults.push({
        is: 'norm_value_unreadable',
        at: cell.at,
        column: name,
        text: cell.text,
        form: column.form,
      })
  }
  return faults.length === before ? [{ row: rowOf(values, choosing, csv.line), at: csv.at, cells }] : []
}

function rowOf(values: ReadonlyMap<string, unknown>, choosing: readonly string[], line: number): NormRow {
  const number = (column: string): number | null => {
    const value = values.get(column)
    return typeof value === 'number' ? value : null
  }
  // Each column's reader gives one of its own words only.
  const oneOf = <Word extends string>(column: string, or: Word): Word => (values.get(column) ?? or) as Word
  const chosen = choosing.flatMap((column) => {
    const cell = values.get(column)
    return cell ? [[column, cell as NormCell] as const] : []
  })
  return {
    sex: oneOf<NormRow['sex']>('sex', 'any'),
    ageMin: number('age_min'),
    ageMax: number('age_max'),
    hand: oneOf<NormRow['hand']>('hand', 'any'),
    chosenBy: Object.fromEntries(chosen),
    n: number('n'),
    mean: number('mean'),
    sd: number('sd'),
    percentiles: percentilesOf(values),
    lms: lmsOf(number('l'), number('m'), number('s')),
    cutOff: cutOffOf(values, number('cut')),
    band: bandOf(values, number('from'), number('below')),
    provenance: oneOf<NormRow['provenance']>('provenance', 'memory'),
    line,
  }
}

function percentilesOf(values: ReadonlyMap<string, unknown>): NormRow['percentiles'] {
  return [...values]
    .flatMap(([column, value]) => {
      const rank = rankOf(column)
      return rank !== null && typeof value === 'number' ? [{ rank, value }] : []
    })
    .sort((a, b) => a.rank - b.rank)
}

function lmsOf(l: number | null, m: number | null, s: number | null): NormRow['lms'] {
  return l === null || m === null || s === null ? null : { l, m, s }
}

function cutOffOf(values: ReadonlyMap<string, unknown>, value: number | null): NormRow['cutOff'] {
  const [below, above] = [values.get('below'), values.get('above')]
  if (value === null || typeof below !== 'string' || typeof above !== 'string') return null
  return { value, below, above, equal: values.get('equal') === 'below' ? 'below' : 'above' }
}

function bandOf(
  values: ReadonlyMap<string, unknown>,
  from: number | null,
  below: number | null,
): NormRow['band'] {
  const id = values.get('band')
  return typeof id === 'string' ? { id, from, below } : null
}
