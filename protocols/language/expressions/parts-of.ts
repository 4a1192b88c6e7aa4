import type { Term } from './term.ts'

/** The terms that a term is made of. */
export const partsOf = (term: Term): readonly Term[] => {
  switch (term.is) {
    case 'constant':
    case 'name':
      return []
    case 'call':
      return term.args
    case 'list':
      return term.items
    case 'map':
      return term.entries.map(([, value]) => value)
    case 'if':
      return [term.test, term.yes, term.no]
    case 'and':
    case 'or':
    case 'arithmetic':
    case 'compare':
      return [term.left, term.right]
    case 'index':
      return [term.of, term.key]
    case 'in':
      return [term.item, term.of]
    case 'macro':
      return [term.of, ...(term.where === null ? [] : [term.where]), term.body]
    default:
      return [term.of]
  }
}
