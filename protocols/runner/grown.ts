/**
 * A list that grows at its end without being copied: values that share a past share its items. Adding to a
 * value that isn't the newest copies, so no value ever sees another's additions.
 */
export interface Grown<Item> {
  /** Longer than `length` where a later value has grown from this one: never read beyond it. */
  readonly items: readonly Item[]
  readonly length: number
}

export const nothingGrown = <Item>(): Grown<Item> => ({ items: [], length: 0 })

export function grow<Item>(grown: Grown<Item>, item: Item): Grown<Item> {
  const isNewest = grown.items.length === grown.length
  const items = isNewest ? (grown.items as Item[]) : grown.items.slice(0, grown.length)
  items.push(item)
  return { items, length: grown.length + 1 }
}

const lists = new WeakMap<Grown<unknown>, readonly unknown[]>()

/** The items as a list of their own, which stays as it is. */
export function listOf<Item>(grown: Grown<Item>): readonly Item[] {
  const before = lists.get(grown)
  if (before !== undefined) return before as readonly Item[]
  const list = grown.items.slice(0, grown.length)
  lists.set(grown, list)
  return list
}

/** The newest item that fits, without a copy of the list. */
export function newest<Item>(grown: Grown<Item>, fits: (item: Item) => boolean): Item | null {
  for (let index = grown.length - 1; index >= 0; index -= 1) {
    const item = grown.items[index] as Item
    if (fits(item)) return item
  }
  return null
}

/** The same list with one item replaced; copies, for what is put right now and then. */
export function replaced<Item>(grown: Grown<Item>, index: number, item: Item): Grown<Item> {
  const items = grown.items.slice(0, grown.length)
  items[index] = item
  return { items, length: items.length }
}
