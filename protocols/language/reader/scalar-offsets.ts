/**
 * Where a character of a scalar's value stands in the file, through quotes, escapes and folded lines: so that
 * an error inside an expression points at the very character.
 */
import type { ScalarNode } from './tree.ts'

/** Offsets into the file for each character of `scalar.written`, and one more for its end. */
export function scalarOffsets(text: string, scalar: ScalarNode): readonly number[] {
  const decoded = scalar.written
  const offsets: number[] = []
  let at = contentStart(text, scalar)
  let index = 0
  while (index < decoded.length) {
    if (scalar.style === 'double' && text[at] === '\\' && !isLineContinuation(text, at)) {
      const length = escapeLength(text, at)
      const units = text[at + 1] === 'U' && isPair(decoded, index) ? 2 : 1
      for (let unit = 0; unit < units; unit++) offsets.push(at)
      index += units
      at += length
    } else if (isBlank(decoded[index])) {
      const run = blankRun(decoded, index)
      const end = sourceBlankEnd(text, at, scalar)
      const folded = text.slice(at, end).includes('\n')
      for (let step = 0; step < run; step++) offsets.push(folded ? at : Math.min(at + step, end))
      index += run
      at = end
    } else {
      at = sourceBlankEnd(text, at, scalar)
      if (scalar.style === 'double' && text[at] === '\\') continue
      offsets.push(at)
      index++
      at += scalar.style === 'single' && text[at] === "'" ? 2 : 1
    }
  }
  offsets.push(at)
  return offsets
}

function contentStart(text: string, { style, at }: ScalarNode): number {
  if (style === 'single' || style === 'double') return at.start + 1
  if (style === 'plain') return at.start
  const header = text.indexOf('\n', at.start)
  return header < 0 ? at.end : header + 1
}

const isBlank = (char: string | undefined): boolean =>
  char === ' ' || char === '\t' || char === '\n' || char === '\r'

/** End of the blanks at `at`; in double quotes a backslash before a line's end belongs to them. */
function sourceBlankEnd(text: string, at: number, scalar: ScalarNode): number {
  let end = at
  while (end < scalar.at.end) {
    if (isBlank(text[end])) end++
    else if (scalar.style === 'double' && isLineContinuation(text, end)) end += 1
    else break
  }
  return end
}

function blankRun(decoded: string, index: number): number {
  let end = index
  while (isBlank(decoded[end])) end++
  return end - index
}

function isLineContinuation(text: string, at: number): boolean {
  return text[at] === '\\' && (text[at + 1] === '\n' || text[at + 1] === '\r')
}

function escapeLength(text: string, at: number): number {
  return { x: 4, u: 6, U: 10 }[text[at + 1] ?? ''] ?? 2
}

function isPair(decoded: string, index: number): boolean {
  const unit = decoded.charCodeAt(index)
  return unit >= 0xd800 && unit < 0xdc00
}
