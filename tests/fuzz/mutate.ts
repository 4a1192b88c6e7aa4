/**
 * Protocol folders that nobody would write: sound and faulty ones of the corpus with pieces moved, doubled, cut,
 * mixed with those of others or replaced by what readers trip over. A case is made from its number alone.
 */
import type { ProtocolFolder } from '../../protocols/language/folder.ts'

const MOST_LINES = 150
const MAIN = 'protocol.yaml'

/** Draws whole numbers below a bound; the same for the same seed (mulberry32). */
function drawing(seed: number): (below: number) => number {
  let state = seed >>> 0
  return (below) => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) % below
  }
}

type Draw = (below: number) => number
/** Lines of one file to other lines; `donor` has lines of another one. */
type Mutation = (lines: readonly string[], draw: Draw, donor: readonly string[]) => readonly string[]

const one = <T>(list: readonly T[], draw: Draw): T => {
  const chosen = list[draw(Math.max(1, list.length))]
  if (chosen === undefined) throw new Error('There is nothing to draw from.')
  return chosen
}

/** What readers of text, of YAML, of expressions, of numbers and of units trip over. */
const AWKWARD = [
  '&a [*a]',
  '&a [x, x]\nb: &b [*a, *a, *a, *a, *a, *a, *a, *a]\nc: &c [*b, *b, *b, *b, *b, *b, *b, *b]\nd: [*c, *c, *c, *c, *c, *c, *c]',
  '[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]',
  '{ a: { a: { a: { a: { a: { a: { a: { a: { a: 1 } } } } } } } } }',
  '((((((((((((((((((((((((((((((((((((((((1))))))))))))))))))))))))))))))))))))))))',
  '- - - - - - - - - - - - - - - - - - - - x',
  '1e309',
  '-1e309',
  '.inf',
  '.nan',
  '-0',
  '0x7fffffffffffffff',
  '0o777777',
  '99999999999999999999999999999999',
  '1e-400 s',
  '1_000 s',
  '60 s s',
  '60 fortnights',
  '1 s2/m3.kg-1',
  '{score}',
  '2026-13-45',
  '12:30:45',
  'yes',
  'NULL',
  '~',
  '""',
  "''",
  '!!binary aGVsbG8=',
  '!!js/function "x"',
  '!a!b c',
  '%YAML 9.9',
  '---\n---',
  '...',
  '<<: *a',
  '? [a, b]\n: c',
  '>-\n  folded',
  '|+9\n  kept',
  '\u202eevil\u202c',
  '\u2066\u2067\u2069',
  '\ufeff',
  '\u0000',
  '\u0085',
  '\u2028',
  '\ud800',
  '\ud83e\udd1a\ud83c\udffd',
  'e\u0301\u0301\u0301',
  '\t',
  '\r',
  '../../../etc/passwd',
  '/etc/passwd',
  'file:///etc/passwd',
  'C:\\windows\\win.ini',
  'norms/../../secret.csv',
  'https://example.org/x.svg',
  '__proto__',
  'constructor',
  'toString',
  'hasOwnProperty',
  '"1" + 1',
  '1 / 0',
  'min(min(min(min(min(carry.time)))))',
  'a.b.c.d.e.f[0][1]["x"].y(z)',
  '[1,2,3].all(x, [1,2,3].all(y, x < y))',
  'last(carry.time, 1e9)',
  "'a'.matches('(a+)+$')",
  '"\\u0000".size() > 1 ? quantity(1, \'s\') : null',
  '{ from: "{ from: x }" }',
  '{count, plural, one {#} other {#}}',
  '{a, select, other {{b, select, other {{c}}}}}',
  "{'",
  '={1+1}',
]

const SVG = [
  '<svg xmlns="http://www.w3.org/2000/svg"><title>T</title><script>alert(1)</script></svg>',
  '<svg xmlns="http://www.w3.org/2000/svg" onload="x()"><title>T</title></svg>',
  '<svg xmlns="http://www.w3.org/2000/svg"><title>T</title><use href="https://example.org/a.svg#b"/></svg>',
  '<!DOCTYPE svg [<!ENTITY a "b"><!ENTITY c "&a;&a;&a;&a;">]><svg><title>&c;</title></svg>',
  '<svg xmlns="http://www.w3.org/2000/svg"><title>T</title><style>@import "x"</style></svg>',
  '<svg xmlns="http://www.w3.org/2000/svg"><title>T</title><foreignObject><iframe/></foreignObject></svg>',
  '<svg><title>T',
  '\u0000<svg/>',
]

const TABLES = [
  'age_from,age_to,sex,n,mean,sd\n20,24,female,10,"1,5',
  'age_from,age_to,sex,n,mean,sd\n20,24,female,10,=1+1,2\n20,24,female,10,1,2',
  '\u0000,\u0000\n1,2',
  'a;b;c\n1;2;3',
  'mean\n1e999\n-1e999\nNaN',
  '"a""b","c\nd"\r\n"',
  '',
]

const indentOf = (line: string): number => line.length - line.trimStart().length
const at = (lines: readonly string[], draw: Draw): number => draw(Math.max(1, lines.length))

/** The lines of a block: the one at `from` and all deeper ones under it. */
function blockAt(lines: readonly string[], from: number): readonly string[] {
  const depth = indentOf(lines[from] ?? '')
  let end = from + 1
  while (end < lines.length && (indentOf(lines[end] ?? '') > depth || lines[end]?.trim() === '')) end += 1
  return lines.slice(from, end)
}

const shifted = (block: readonly string[], by: number): readonly string[] =>
  block.map((line) => (by >= 0 ? ' '.repeat(by) + line : line.slice(Math.min(-by, indentOf(line)))))

const MUTATIONS: readonly Mutation[] = [
  // A line or a block gone, doubled, moved, taken from elsewhere.
  (lines, draw) => lines.toSpliced(at(lines, draw), 1 + draw(3)),
  (lines, draw) => {
    const from = at(lines, draw)
    return lines.toSpliced(from, blockAt(lines, from).length)
  },
  (lines, draw) => {
    const from = at(lines, draw)
    return lines.toSpliced(from, 0, ...blockAt(lines, from))
  },
  (lines, draw) => {
    const from = at(lines, draw)
    const block = blockAt(lines, from)
    const rest = lines.toSpliced(from, block.length)
    const to = at(rest, draw)
    return rest.toSpliced(to, 0, ...shifted(block, indentOf(rest[to] ?? '') - indentOf(block[0] ?? '')))
  },
  (lines, draw, donor) => {
    const block = blockAt(donor, at(donor, draw))
    const to = at(lines, draw)
    return lines.toSpliced(to, 0, ...shifted(block, indentOf(lines[to] ?? '') - indentOf(block[0] ?? '')))
  },
  // A value for another's, or for something awkward; a key for another's.
  (lines, draw, donor) => {
    const to = at(lines, draw)
    const value = one(donor, draw).split(/:\s/).at(-1) ?? ''
    return lines.with(
      to,
      (lines[to] ?? '').replace(/:\s.*$/, () => `: ${value}`),
    )
  },
  (lines, draw) => {
    const to = at(lines, draw)
    return lines.with(
      to,
      (lines[to] ?? '').replace(/(:\s|- ).*$/, (_, mark) => `${mark}${one(AWKWARD, draw)}`),
    )
  },
  (lines, draw, donor) => {
    const to = at(lines, draw)
    const key = /([\w-]+):/.exec(one(donor, draw))?.[1] ?? 'key'
    return lines.with(
      to,
      (lines[to] ?? '').replace(/[\w-]+:/, () => `${key}:`),
    )
  },
  (lines, draw) => {
    const to = at(lines, draw)
    const line = lines[to] ?? ''
    const words = line.match(/[\w.-]+/g) ?? ['x']
    return lines.with(
      to,
      line.replace(one(words, draw), () => one(AWKWARD, draw)),
    )
  },
  // A step to the left or right, a character more, less or other.
  (lines, draw) => {
    const to = at(lines, draw)
    return lines.with(to, draw(2) === 0 ? ` ${lines[to] ?? ''}` : (lines[to] ?? '').slice(1))
  },
  (lines, draw) => {
    const to = at(lines, draw)
    const line = lines[to] ?? ''
    const where = draw(line.length + 1)
    const put = one([...'{}[]:,&*#|>\'"%@`!?-\\ \t<=(.)'], draw)
    return lines.with(to, line.slice(0, where) + put + line.slice(where + draw(2)))
  },
  (lines, draw) => lines.toSpliced(at(lines, draw), 0, one(AWKWARD, draw)),
  (lines, draw) => {
    const text = lines.join('\n')
    return text.slice(0, draw(text.length + 1)).split('\n')
  },
  (lines, draw) => lines.map((line) => (draw(12) === 0 ? `${line}\r` : line)),
]

export interface Seed {
  readonly name: string
  readonly folder: ProtocolFolder
}

const linesOf = ({ folder }: Seed): readonly string[] => (folder.files.get(MAIN) ?? '').split('\n')

export interface Seeds {
  readonly sound: readonly Seed[]
  readonly faulty: readonly Seed[]
}

/** The case of one number. At most 150 lines of it are kept. */
export function mutated({ sound, faulty }: Seeds, number: number): ProtocolFolder {
  const draw = drawing(number)
  const seed = one(draw(3) > 0 ? sound : faulty, draw)
  const donor = linesOf(one(draw(2) > 0 ? sound : faulty, draw))
  let lines: readonly string[] = linesOf(seed).slice(0, MOST_LINES)
  // One change as often as several: what is nearly right gets furthest in.
  for (let left = draw(2) === 0 ? 1 : 1 + draw(6); left > 0; left -= 1) {
    lines = one(MUTATIONS, draw)(lines, draw, donor)
    if (lines.length === 0) lines = ['']
  }
  const files = new Map(seed.folder.files)
  const text = lines.join('\n').split('\n').slice(0, MOST_LINES).join('\n')
  files.set(MAIN, draw(50) === 0 ? `\ufeff${text}` : text)
  for (const [name, body] of seed.folder.files) {
    if (name === MAIN || draw(4) !== 0) continue
    if (name.endsWith('.svg')) files.set(name, one(SVG, draw))
    else if (name.endsWith('.csv')) files.set(name, one(TABLES, draw))
    else files.set(name, [...one(MUTATIONS, draw)(body.split('\n'), draw, donor)].join('\n'))
  }
  return { label: '', files }
}
