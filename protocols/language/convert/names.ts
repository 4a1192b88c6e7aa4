/** The names that a file declares, read off the tree: also of what is broken, so that nobody misses them. */
import type { Range } from '../diagnostics.ts'
import { childOf, type MapNode, type Tree } from '../reader/tree.ts'
import { innerSteps } from '../schema/inner-steps.ts'
import { NODE_SCHEMAS, SECTION_KINDS } from '../schema/kinds.ts'
import { NAME } from '../schema/shapes.ts'
import { writtenOf } from './values.ts'

export type NameOf =
  | 'step'
  | 'section'
  /** What steps in a section see by another name than the section's own, such as the level of a ladder. */
  | 'loop'
  | 'rule'
  | 'score'
  | 'norm'
  | 'condition'
  | 'option'
  | 'list'
  | 'item'
  | 'property'
  | 'happening'
  | 'kit'
  | 'precaution'
  | 'source'
  | 'accommodation'
  /** Something inside a section of an unknown kind: perhaps a step, perhaps none. */
  | 'perhaps'

export interface Declared {
  readonly name: string
  readonly of: NameOf
  readonly at: Range
  readonly tree: Tree
}

/** Every name with its place, in the order of the file. */
export function declaredNames(tree: MapNode): readonly Declared[] {
  return [
    ...fromKeys(tree, 'kit', 'kit'),
    ...fromKeys(tree, 'sources', 'source'),
    ...fromKeys(tree, 'accommodations', 'accommodation'),
    ...fromKeys(tree, 'conditions', 'condition'),
    ...fromOptions(tree),
    ...fromKeys(tree, 'lists', 'list'),
    ...fromItems(tree),
    ...fromProperties(tree),
    ...fromKeys(tree, 'happenings', 'happening'),
    ...fromField(tree, 'precautions', 'id', 'precaution'),
    ...fromSteps(childOf(tree, 'steps')),
    ...fromField(tree, 'scores', 'score', 'score'),
    ...fromField(tree, 'norms', 'norm', 'norm'),
  ].sort((a, b) => a.at.start - b.at.start)
}

function fromKeys(tree: Tree, key: string, of: NameOf): readonly Declared[] {
  const map = childOf(tree, key)
  if (map?.is !== 'map') return []
  return map.entries.map(({ key: name, keyAt, value }) => ({ name, of, at: keyAt, tree: value }))
}

function fromOptions(tree: Tree): readonly Declared[] {
  const map = childOf(tree, 'conditions')
  return map?.is === 'map' ? map.entries.flatMap(({ value }) => fromKeys(value, 'options', 'option')) : []
}

function fromItems(tree: Tree): readonly Declared[] {
  const map = childOf(tree, 'lists')
  if (map?.is !== 'map') return []
  return map.entries.flatMap(({ key, value }) => [
    ...fromField(map, key, 'id', 'item'),
    ...fromKeys(value, 'draw', 'item'),
  ])
}

function fromProperties(tree: Tree): readonly Declared[] {
  const lists = childOf(tree, 'lists')
  if (lists?.is !== 'map') return []
  return lists.entries.flatMap(({ value }) => {
    if (value.is !== 'list') return []
    return value.items.flatMap((item) => {
      const entries = item.is === 'map' ? item.entries.filter(({ key }) => key !== 'id') : []
      return entries.map(({ key, keyAt }) => ({ name: key, of: 'property' as const, at: keyAt, tree: item }))
    })
  })
}

function fromField(tree: Tree, key: string, field: string, of: NameOf): readonly Declared[] {
  const list = childOf(tree, key)
  if (list?.is !== 'list') return []
  return list.items.flatMap((item) => {
    const name = childOf(item, field)
    const written = writtenOf(name)
    return name && written !== null ? [{ name: written, of, at: name.at, tree: item }] : []
  })
}

function fromSteps(list: Tree | null): readonly Declared[] {
  if (list?.is !== 'list') return []
  return list.items.flatMap((item) => {
    const declared = fromNode(item)
    const kind = item.is === 'map' ? item.entries[0]?.key : undefined
    if (kind !== undefined && NODE_SCHEMAS.has(kind)) {
      if (item.is !== 'map' || !SECTION_KINDS.has(kind)) return declared
      return [
        ...declared,
        ...fromLevel(item),
        ...innerSteps(item).flatMap(({ list: steps }) => fromSteps(steps)),
      ]
    }
    return [...declared, ...fromAnywhere(item)]
  })
}

function fromLevel(tree: MapNode): readonly Declared[] {
  const level = childOf(tree, 'level')
  const name = writtenOf(level)
  return level === null || name === null ? [] : [{ name, of: 'loop', at: level.at, tree }]
}

/** The names of one kind, with those that may be of it. */
export function namesOf(declared: readonly Declared[], of: 'step' | 'section' | 'loop'): readonly string[] {
  return declared.filter((each) => each.of === of || each.of === 'perhaps').map(({ name }) => name)
}

function fromNode(tree: Tree): readonly Declared[] {
  const first = tree.is === 'map' ? tree.entries[0] : undefined
  const name = first ? writtenOf(first.value) : null
  if (!first || name === null) return []
  const of = SECTION_KINDS.has(first.key) ? 'section' : first.key === 'rule' ? 'rule' : 'step'
  return [{ name, of, at: first.value.at, tree }]
}

/** Inside a section of an unknown kind any map may be a step: its name is not missed by whoever reads it. */
function fromAnywhere(tree: Tree): readonly Declared[] {
  const inner =
    tree.is === 'list' ? tree.items : tree.is === 'map' ? tree.entries.map(({ value }) => value) : []
  return inner.flatMap((each) => {
    const perhaps = fromNode(each).filter(({ name }) => NAME.test(name))
    return [...perhaps.map((declared) => ({ ...declared, of: 'perhaps' as const })), ...fromAnywhere(each)]
  })
}
