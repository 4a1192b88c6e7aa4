/** Which numbers an expression holds the columns of steps against: what a walk by values has to try around. */
import { scaled } from '../../decimal.ts'
import { number } from './datum.ts'
import { evaluateDatum } from './evaluate.ts'
import { partsOf } from './parts-of.ts'
import type { Term } from './term.ts'
import type { Expression } from './types.ts'

/** A column of a step (`carry.time`), or a name that may be a score's, and by what it was scaled where it stands. */
interface Read {
  readonly name: string
  readonly column: string | null
  readonly by: number
}

export interface ComparedNumber {
  readonly step: string
  readonly column: string
  /** In the unit of the column. */
  readonly n: number
}

/** What names of the file stand for. */
export interface Meanings {
  /** The formula of a score; null for any other name. */
  score(name: string): Expression | null
  /** The numbers that a condition may be; empty for any other name. */
  numbers(name: string): readonly number[]
}

/** Steps whose rows a macro goes through, by the name it gives them. */
type Locals = ReadonlyMap<string, readonly string[]>

function readIn(term: Term, by: number, locals: Locals): readonly Read[] {
  if (term.is === 'convert') return readIn(term.of, by * scaled(1, term.by), locals)
  if (term.is === 'name') return term.local ? [] : [{ name: term.name, column: null, by }]
  if (term.is === 'field' && term.of.is === 'name') {
    const steps = term.of.local ? (locals.get(term.of.name) ?? []) : [term.of.name]
    return steps.map((name) => ({ name, column: term.name, by }))
  }
  const within = term.is === 'macro' ? inside(term, locals) : locals
  return partsOf(term).flatMap((part) => readIn(part, by, within))
}

function inside(term: Extract<Term, { is: 'macro' }>, locals: Locals): Locals {
  const steps = readIn(term.of, 1, locals).map(({ name }) => name)
  return new Map([...locals, [term.name, steps]])
}

/** Only `checkExpression` makes expressions, and it puts a term there. */
const termOf = ({ tree }: Expression): Term => tree as Term

/** Columns that a read rests on: its own, or those under the score that it names. */
function columnsUnder(read: Read, meanings: Meanings, seen: readonly string[]): readonly Read[] {
  if (read.column !== null) return [read]
  const score = seen.includes(read.name) ? null : meanings.score(read.name)
  if (score === null) return []
  return readIn(termOf(score), read.by, new Map()).flatMap((one) =>
    columnsUnder(one, meanings, [...seen, read.name]),
  )
}

/** What a side that rests on no step can be; empty where that isn't known. */
function numbersIn(side: Term, expression: Expression, meanings: Meanings): readonly number[] {
  const names = [...new Set(readIn(side, 1, new Map()).map(({ name }) => name))]
  const [name] = names
  if (names.length > 1) return []
  const values = name === undefined ? [0] : meanings.numbers(name)
  return values.flatMap((value) => {
    const datum = evaluateDatum({ ...expression, tree: side }, { read: () => number(value) })
    const data = datum.is === 'list' ? datum.items : [datum]
    return data.flatMap((one) => (one.is === 'number' ? [one.n] : []))
  })
}

function pairsIn(term: Term, locals: Locals): readonly (readonly [Term, Term, Locals])[] {
  const within = term.is === 'macro' ? inside(term, locals) : locals
  const inner = partsOf(term).flatMap((part) => pairsIn(part, within))
  if (term.is === 'compare') return [[term.left, term.right, locals], ...inner]
  return term.is === 'in' ? [[term.item, term.of, locals], ...inner] : inner
}

/** Every number that a column is compared with in this expression, also by way of a score. */
export function comparedNumbers(expression: Expression, meanings: Meanings): readonly ComparedNumber[] {
  return pairsIn(termOf(expression), new Map()).flatMap(([left, right, locals]) =>
    [
      [left, right],
      [right, left],
    ].flatMap(([side, other]) => {
      if (side === undefined || other === undefined) return []
      const columns = readIn(side, 1, locals).flatMap((read) => columnsUnder(read, meanings, []))
      if (columns.length === 0) return []
      const numbers = numbersIn(other, expression, meanings)
      return columns.flatMap(({ name, column, by }) =>
        column === null ? [] : numbers.map((n) => ({ step: name, column, n: n / by })),
      )
    }),
  )
}
