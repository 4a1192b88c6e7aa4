/** Single values of the file as the model has them: words, quantities, expressions. */
import type { Expression } from '../expressions/types.ts'
import type { From, Quantity, Section, Text } from '../model.ts'
import { childOf, entryOf, type ScalarNode, type Tree } from '../reader/tree.ts'
import { QUANTITY } from '../schema/shapes.ts'
import type { Draft, Wanted } from './draft.ts'

/** Where a value stands: what its expression may see, and whose it is. */
export interface Standing {
  readonly around: readonly Section[]
  readonly each: readonly string[]
  readonly owner: Tree
}

/** Words under `key`; `{ from }` picks them from an item. */
export function textFrom(draft: Draft, tree: Tree, key: string, standing: Standing): Text {
  const source = childOf(tree, 'from')
  if (source) return { from: expressionFrom(draft, source, 'from', { is: 'text' }, standing) }
  return wordsFrom(draft, tree, key, standing.around)
}

/** Words under `key` that are always written out. */
export function wordsFrom(
  draft: Draft,
  tree: Tree | null,
  key: string,
  around: readonly Section[] = [],
): Text {
  const node = tree?.is === 'scalar' ? tree : null
  const at = node?.at ?? draft.tree.at
  draft.texts.set(key, { key, words: node ? node.written.trim() : '', at, node, around })
  return { key }
}

/** Words that stand nowhere in the file, such as those of a built-in reason. */
export function givenWords(draft: Draft, key: string, words: string): Text {
  draft.texts.set(key, {
    key,
    words,
    at: { ...draft.tree.at, end: draft.tree.at.start },
    node: null,
    around: [],
  })
  return { key }
}

/** A number with its unit; a bare number has unit `1`. The schema has seen to its form. */
export function quantityFrom(draft: Draft, tree: Tree): Quantity {
  if (tree.is !== 'scalar') return { value: Number.NaN, unit: '1' }
  if (typeof tree.value === 'number') return { value: tree.value, unit: '1' }
  const [, value = '', unit = '1'] = QUANTITY.exec(tree.written) ?? []
  draft.units.push({ unit, at: tree.at })
  return { value: Number(value), unit }
}

/** The quantity that a text spells, or null where it spells none. */
export function quantityIn(written: string): Quantity | null {
  const found = QUANTITY.exec(written)
  return found ? { value: Number(found[1]), unit: found[2] ?? '1' } : null
}

/** A value or `{ from }` of one. */
export function valueFrom(
  draft: Draft,
  tree: Tree,
  key: string,
  kind: 'time' | 'number',
  standing: Standing,
): From<Quantity> | From<number> {
  const source = childOf(tree, 'from')
  if (source) {
    const wanted: Wanted = { is: 'number', unit: kind === 'number' ? null : 's' }
    return { from: expressionFrom(draft, source, key, wanted, standing) }
  }
  if (kind === 'time') return { is: quantityFrom(draft, tree) }
  return { is: tree.is === 'scalar' && typeof tree.value === 'number' ? tree.value : Number.NaN }
}

/** An expression whose type is found once all names are known. */
export function expressionFrom(
  draft: Draft,
  tree: Tree,
  key: string,
  wanted: Wanted,
  { around, each, owner }: Standing,
): Expression {
  const node: ScalarNode =
    tree.is === 'scalar' ? tree : { is: 'scalar', value: null, written: '', style: 'plain', at: tree.at }
  const source = node.written
  const hole: Expression = { source, tree: null, type: { is: 'null' }, reads: [] }
  draft.expressions.push({ hole, node, around, each, wanted, key, owner })
  return hole
}

export function writtenOf(tree: Tree | null): string | null {
  return tree?.is === 'scalar' && tree.value !== null ? tree.written : null
}

function numbersOf(tree: Tree | null): readonly number[] {
  if (tree?.is !== 'list') return []
  return tree.items.flatMap((item) =>
    item.is === 'scalar' && typeof item.value === 'number' ? [item.value] : [],
  )
}

export function pairOf(tree: Tree | null): readonly [number, number] | null {
  const [low, high] = numbersOf(tree)
  return low === undefined || high === undefined ? null : [low, high]
}

export function isTrue(tree: Tree | null): boolean {
  return tree?.is === 'scalar' && tree.value === true
}

/** Entries of the map under a top-level key, without those that a problem was reported in. */
export function soundEntries(
  draft: Draft,
  key: string,
): readonly { readonly key: string; readonly value: Tree }[] {
  const map = entryOf(draft.tree, key)?.value
  return map?.is === 'map' ? map.entries.filter(({ value }) => !draft.isBroken(value)) : []
}

/** Items of the list under a top-level key, without those that a problem was reported in. */
export function soundItems(
  draft: Draft,
  key: string,
): readonly { readonly item: Tree; readonly position: number }[] {
  const list = childOf(draft.tree, key)
  if (list?.is !== 'list') return []
  return list.items.map((item, position) => ({ item, position })).filter(({ item }) => !draft.isBroken(item))
}

/** What authors name, to be looked up by name: nothing that every object has of itself, such as `constructor`, is found in it. */
export const byName = <T>(named: Readonly<Record<string, T>>): Readonly<Record<string, T>> =>
  Object.assign(Object.create(null), named)
