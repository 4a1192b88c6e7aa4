/** What an expression reads of each name that it looks up, as closely as its form tells. */
import type { Term } from './term.ts'
import { partsOf } from './parts-of.ts'
import type { Expression } from './types.ts'

export interface NameRead {
  readonly name: string
  /** The one column of a step's table that is read; null: any of them, or the name is no step. */
  readonly column: string | null
  /** Where nothing but the first or the last row of the column counts. */
  readonly end: 'first' | 'last' | null
}

/** Every way in which the expression reads a name that no macro of its own has bound. */
export const readsIn = ({ tree }: Expression): readonly NameRead[] =>
  // Only `checkExpression` makes expressions, and it puts a term there.
  readsOf(tree as Term)

function readsOf(term: Term): readonly NameRead[] {
  if (term.is === 'name') return term.local ? [] : [{ name: term.name, column: null, end: null }]
  const column = columnOf(term)
  if (column !== null) return [{ ...column, end: null }]
  const end = endOf(term)
  return end === null ? partsOf(term).flatMap(readsOf) : [end]
}

function columnOf(term: Term): Omit<NameRead, 'end'> | null {
  if (term.is !== 'field' || term.of.is !== 'name' || term.of.local) return null
  return { name: term.of.name, column: term.name === 'rows' ? null : term.name }
}

/** `first(step.column)`, `last(step.column)`: without a number of rows. */
function endOf(term: Term): NameRead | null {
  if (term.is !== 'call' || term.args.length !== 1) return null
  const [column] = term.args.map(columnOf)
  if (!column) return null
  return term.formula === 'first' || term.formula === 'last' ? { ...column, end: term.formula } : null
}
