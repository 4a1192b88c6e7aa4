/**
 * A YAML file as a tree of our own, with a range on every node: what all later stages see. The YAML library's
 * own nodes stay behind `yaml.ts`.
 */
import type { Range } from '../diagnostics.ts'

interface Placed {
  readonly at: Range
}

export type ScalarStyle = 'plain' | 'single' | 'double' | 'folded' | 'literal'

/** One value. `written` is its text after quotes and folds are undone, also of a number (`1.0`, `010`). */
export interface ScalarNode extends Placed {
  readonly is: 'scalar'
  readonly value: string | number | boolean | null
  readonly written: string
  readonly style: ScalarStyle
}

export interface Entry {
  readonly key: string
  readonly keyAt: Range
  readonly value: Tree
}

export interface MapNode extends Placed {
  readonly is: 'map'
  readonly entries: readonly Entry[]
}

interface ListNode extends Placed {
  readonly is: 'list'
  readonly items: readonly Tree[]
}

/** A place of which a problem was already reported: later stages pass over it. */
interface BrokenNode extends Placed {
  readonly is: 'broken'
}

export type Tree = ScalarNode | MapNode | ListNode | BrokenNode

/** A way through a tree: keys of maps and positions in lists. */
export type Path = readonly (string | number)[]

export function entryOf(tree: Tree | null | undefined, key: string): Entry | null {
  if (tree?.is !== 'map') return null
  return tree.entries.find((entry) => entry.key === key) ?? null
}

export function childOf(tree: Tree | null | undefined, key: string | number): Tree | null {
  if (tree?.is === 'list') return typeof key === 'number' ? (tree.items[key] ?? null) : null
  return entryOf(tree, String(key))?.value ?? null
}

/** The node at `path`, or the deepest one on the way to it, with how many steps of the path it took. */
export function deepest(tree: Tree, path: Path): { readonly node: Tree; readonly taken: number } {
  let node = tree
  for (const [taken, key] of path.entries()) {
    const next = childOf(node, key)
    if (!next) return { node, taken }
    node = next
  }
  return { node, taken: path.length }
}

export function nodeAt(tree: Tree, path: Path): Tree | null {
  const found = deepest(tree, path)
  return found.taken === path.length ? found.node : null
}

/** Whether something inside was already reported. */
export function hasBroken(tree: Tree): boolean {
  if (tree.is === 'broken') return true
  if (tree.is === 'map') return tree.entries.some(({ value }) => hasBroken(value))
  return tree.is === 'list' && tree.items.some(hasBroken)
}

/**
 * The tree as bare values for a schema. Maps have no prototype, so that no key (`__proto__`, `constructor`)
 * means anything; a broken node is `undefined`.
 */
export function plain(tree: Tree): unknown {
  if (tree.is === 'scalar') return tree.value
  if (tree.is === 'list') return tree.items.map(plain)
  if (tree.is === 'broken') return undefined
  const map: Record<string, unknown> = Object.create(null) as Record<string, unknown>
  for (const { key, value } of tree.entries) map[key] = plain(value)
  return map
}
