import type { Problem } from '../diagnostics.ts'
import { type ReaderCode, readerProblem } from './problems.ts'

/** Half-open ranges of code units that have no business in a protocol, by the code that reports them. */
const SUSPECTS: readonly {
  readonly code: ReaderCode
  readonly ranges: readonly (readonly [number, number])[]
}[] = [
  {
    code: 'bidi_control',
    ranges: [
      [0x202a, 0x202f],
      [0x2066, 0x206a],
    ],
  },
  {
    code: 'control_character',
    ranges: [
      [0x00, 0x09],
      [0x0b, 0x0d],
      [0x0e, 0x20],
      [0x7f, 0x85],
      [0x86, 0xa0],
      [0x2028, 0x202a],
      [0xfeff, 0xff00],
    ],
  },
  { code: 'unreadable_character', ranges: [[0xfffd, 0xfffe]] },
]

/** Reports of one file stop here; more would only bury the first. */
const MOST = 20

/** Characters that can't be seen or that make a line look different from what it says. */
export function* suspectCharacters(file: string, text: string): Iterable<Problem> {
  let start = 0
  if (text.startsWith('\uFEFF')) {
    yield readerProblem('byte_order_mark', { file, start: 0, end: 1 })
    start = 1
  }
  const crlf = text.indexOf('\r\n')
  if (crlf >= 0) yield readerProblem('crlf_lines', { file, start: crlf, end: crlf + 1 })
  let found = 0
  for (let at = start; at < text.length && found < MOST; at++) {
    const code = suspect(text, at)
    if (!code) continue
    found++
    const point = text.charCodeAt(at).toString(16).toUpperCase().padStart(4, '0')
    yield readerProblem(code, { file, start: at, end: at + 1 }, `U+${point}`)
  }
}

function suspect(text: string, at: number): ReaderCode | null {
  const unit = text.charCodeAt(at)
  if (unit >= 0x20 && unit < 0x7f) return null
  if (unit === 0x0d) return text.charCodeAt(at + 1) === 0x0a ? null : 'control_character'
  for (const { code, ranges } of SUSPECTS) {
    if (ranges.some(([from, until]) => unit >= from && unit < until)) return code
  }
  return null
}
