/**
 * A list that grows at its end without being copied: values that share a past share its items. Adding to a
 * value that isn't the newest copies, so no value ever sees another's additions.
 */
export interface Grown<Item> {
  readonly items: readonly Item[]
  readonly length: number
}

export const nothingGrown = <Item>(): Grown<Item> => ({ items: [], length: 0 })

export function grow<Item>(grown: Grown<Item>, item: Item): Grown<Item> {
  const shared = grown.items.length === grown.length
  const items = shared ? (grown.items as Item[]) : grown.items.slice(0, grown.length)
  items.push(item)
  return { items, length: grown.length + 1 }
}

export const listOf = <Item>(grown: Grown<Item>): readonly Item[] =>
  grown.items.length === grown.length ? grown.items : grown.items.slice(0, grown.length)

/** The same list with one item replaced; copies, for what is put right now and then. */
export function replaced<Item>(grown: Grown<Item>, index: number, item: Item): Grown<Item> {
  const items = listOf(grown).slice()
  items[index] = item
  return { items, length: items.length }
}
