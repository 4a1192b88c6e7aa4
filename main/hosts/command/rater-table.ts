/** A table of ratings from a CSV file: a subject a row, its name first, then a value from each rater. */
import { readCsv } from '../../../protocols/language/norms/csv.ts'
import { Lines } from '../../../protocols/language/positions.ts'
import type { Range } from '../../../protocols/language/diagnostics.ts'
import type { HostWord } from '../words.ts'

/** What is wrong with a cell or line of the file. */
export interface TableFault {
  readonly line: number
  readonly column: number
  readonly code: Extract<HostWord, `agree.${string}`>
  readonly detail: Readonly<Record<string, string | number>>
}

export interface RaterTable {
  readonly raters: readonly string[]
  readonly rows: readonly (readonly string[])[]
  /** Subjects who were left out since a rater gave them nothing. */
  readonly dropped: readonly string[]
}

type Read = { readonly table: RaterTable } | { readonly faults: readonly TableFault[] }

/**
 * @param file as it is named in faults
 * @param categories what a cell may hold; null: numbers
 */
export function readRaterTable(file: string, text: string, categories: readonly string[] | null): Read {
  const csv = readCsv(file, text)
  const lines = new Lines(text)
  const at = (range: Range) => lines.at(range.start)
  if (csv.fault !== null)
    return {
      faults: [{ ...at(csv.fault.at), code: 'agree.unreadable', detail: { problem: csv.fault.message } }],
    }
  const [head, ...body] = csv.rows
  if (head === undefined) return { faults: [{ line: 1, column: 1, code: 'agree.empty', detail: {} }] }
  const raters = head.cells.slice(1).map(({ text: name }) => name)
  const faults: TableFault[] = headFaults(raters).map((fault) => ({ ...at(head.at), ...fault }))
  const seen = new Map<string, number>()
  const rows: { readonly subject: string; readonly cells: readonly string[] }[] = []
  for (const { cells, line, at: range } of body) {
    const [subject, ...given] = cells
    const name = subject?.text ?? ''
    const before = seen.get(name)
    if (before !== undefined)
      faults.push({ ...at(range), code: 'agree.twice', detail: { subject: name, line: before } })
    seen.set(name, line)
    if (given.length !== raters.length)
      faults.push({ ...at(range), code: 'agree.cells', detail: { found: given.length, due: raters.length } })
    for (const cell of given)
      if (!isFine(cell.text, categories))
        faults.push({
          ...at(cell.at),
          ...(categories === null
            ? { code: 'agree.no_number', detail: { given: cell.text } }
            : { code: 'agree.no_category', detail: { given: cell.text, categories: categories.join(', ') } }),
        })
    rows.push({ subject: name, cells: given.map((cell) => cell.text) })
  }
  if (faults.length > 0) return { faults }
  return {
    table: {
      raters,
      rows: rows.filter(isWhole).map(({ cells }) => cells),
      dropped: rows.filter((row) => !isWhole(row)).map(({ subject }) => subject),
    },
  }
}

const isWhole = ({ cells }: { readonly cells: readonly string[] }): boolean => !cells.includes('')

function headFaults(raters: readonly string[]): Pick<TableFault, 'code' | 'detail'>[] {
  if (raters.length < 2) return [{ code: 'agree.raters', detail: { found: raters.length } }]
  const twice = raters.find((name, at) => raters.indexOf(name) !== at)
  return twice === undefined ? [] : [{ code: 'agree.rater_twice', detail: { rater: twice } }]
}

/** An empty cell is a rating that isn't there. A decimal comma is told, never read as something else. */
const isFine = (text: string, categories: readonly string[] | null): boolean =>
  text === '' ||
  (categories === null ? /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text) : categories.includes(text))
