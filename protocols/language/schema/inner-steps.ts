import { childOf, type MapNode, type Tree } from '../reader/tree.ts'

/** A list of steps in a section: its own, or those of one of its cases. */
export interface InnerSteps {
  /** Under which the list stands: the section itself, or the case. */
  readonly of: Tree
  readonly list: Extract<Tree, { readonly is: 'list' }>
}

function listIn(of: Tree | null, key: string): readonly InnerSteps[] {
  const list = childOf(of, key)
  return of !== null && list?.is === 'list' ? [{ of, list }] : []
}

/** The lists of steps that stand in a section, in the order of the file. */
export function innerSteps(section: MapNode): readonly InnerSteps[] {
  const cases = childOf(section, 'cases')
  return [
    ...listIn(section, 'steps'),
    ...(cases?.is === 'list' ? cases.items.flatMap((each) => listIn(each, 'steps')) : []),
    ...listIn(section, 'otherwise'),
  ]
}
