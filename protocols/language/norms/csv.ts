/** The one module that knows the CSV library: text to rows of cells, each with its place (RFC 4180). */
import { CsvError, parse } from 'csv-parse/browser/esm/sync'
import type { Range } from '../diagnostics.ts'
import { Lines } from '../positions.ts'

interface Cell {
  readonly text: string
  readonly at: Range
}

export interface CsvRow {
  readonly cells: readonly Cell[]
  /** 1-based. */
  readonly line: number
  readonly at: Range
}

export interface Csv {
  readonly rows: readonly CsvRow[]
  /** What keeps the text from being read to its end. */
  readonly fault: { readonly message: string; readonly at: Range } | null
}

interface Record {
  readonly record: readonly string[]
  readonly raw: string
}

/** Rows of a CSV text; never throws. Empty lines are left out, blanks around cells too. */
export function readCsv(file: string, text: string): Csv {
  const records: Record[] = []
  let fault: Csv['fault'] = null
  try {
    const options = { raw: true, bom: true, trim: true, skip_empty_lines: true, relax_column_count: true }
    records.push(...(parse(text, options) as unknown as Record[]))
  } catch (error) {
    if (!(error instanceof CsvError)) throw error
    const line = typeof error['lines'] === 'number' ? error['lines'] : 1
    const at = lineRange(file, text, line)
    fault = { message: error.message, at }
  }
  const rows: CsvRow[] = []
  const lines = new Lines(text)
  let from = 0
  for (const { record, raw } of records) {
    const body = raw.trim()
    const start = Math.max(from, text.indexOf(body, from))
    const end = start + body.length
    from = end
    rows.push({
      line: lines.at(start).line,
      at: { file, start, end },
      cells: cellsOf(file, body, start, record),
    })
  }
  return { rows, fault }
}

/** Where each cell stands: commas outside of quotes part them. */
function cellsOf(file: string, raw: string, start: number, texts: readonly string[]): readonly Cell[] {
  const bounds: number[] = [0]
  let quoted = false
  for (let at = 0; at < raw.length; at++) {
    if (raw[at] === '"') quoted = !quoted
    else if (raw[at] === ',' && !quoted) bounds.push(at + 1)
  }
  return texts.map((text, index) => {
    const from = bounds[index] ?? raw.length
    const until = index + 1 < bounds.length ? (bounds[index + 1] ?? 0) - 1 : raw.length
    return { text, at: { file, start: start + from, end: start + Math.max(from, until) } }
  })
}

function lineRange(file: string, text: string, line: number): Range {
  let start = 0
  for (let at = 1; at < line && start >= 0; at++) start = text.indexOf('\n', start) + 1 || text.length
  const end = text.indexOf('\n', start)
  return { file, start, end: end < 0 ? text.length : end }
}
