/** Offsets to lines and columns: worked out once, at the edge. */
import type { Diagnostic, Problem } from './diagnostics.ts'

/** Turns offsets of one text into 1-based lines and columns, in UTF-16 units. */
export class Lines {
  readonly #starts: readonly number[]
  readonly #length: number

  constructor(text: string) {
    const starts = [0]
    for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1)
    this.#starts = starts
    this.#length = text.length
  }

  at(offset: number): { readonly line: number; readonly column: number } {
    const clamped = Math.max(0, Math.min(offset, this.#length))
    let low = 0
    let high = this.#starts.length - 1
    while (low < high) {
      const middle = (low + high + 1) >> 1
      if ((this.#starts[middle] ?? 0) <= clamped) low = middle
      else high = middle - 1
    }
    return { line: low + 1, column: clamped - (this.#starts[low] ?? 0) + 1 }
  }
}

/** Problems as they are shown: with lines and columns, by file and place, each said once. */
export function diagnosticsOf(
  files: ReadonlyMap<string, string>,
  label: string,
  problems: readonly Problem[],
): readonly Diagnostic[] {
  const lines = new Map<string, Lines>()
  const linesOf = (file: string): Lines => {
    const known = lines.get(file) ?? new Lines(files.get(file) ?? '')
    lines.set(file, known)
    return known
  }
  const prefix = label === '' ? '' : `${label.replace(/\/+$/, '')}/`
  const sorted = [...problems].sort(
    (a, b) => compare(a.at.file, b.at.file) || a.at.start - b.at.start || compare(a.code, b.code),
  )
  const said = new Set<string>()
  const diagnostics: Diagnostic[] = []
  for (const { code, severity, at, message, mend } of sorted) {
    const key = `${code} ${at.file} ${at.start} ${message}`
    if (said.has(key)) continue
    said.add(key)
    const start = linesOf(at.file).at(at.start)
    const end = linesOf(at.file).at(at.end)
    const file = `${prefix}${at.file}`
    const place = { line: start.line, column: start.column, endLine: end.line, endColumn: end.column }
    diagnostics.push({ code, severity, file, ...place, message, mend })
  }
  return diagnostics
}

/** `protocol.yaml` first, as the file that its author has open; others by name. */
function compare(a: string, b: string): number {
  if (a === b) return 0
  if (a === 'protocol.yaml') return -1
  if (b === 'protocol.yaml') return 1
  return a < b ? -1 : 1
}
