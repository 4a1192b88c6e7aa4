/** Lists that are not written out item by item: drawn ones, and those who rate. */
import type { Draw, Item, Raters } from '../model.ts'
import { childOf, type Tree } from '../reader/tree.ts'
import type { Draft } from './draft.ts'
import { RATER_WORDS } from './built-in-words.ts'
import { byName, givenWords, isTrue, soundEntries, writtenOf } from './values.ts'

const numberOf = (tree: Tree | null): number | null =>
  tree?.is === 'scalar' && typeof tree.value === 'number' ? tree.value : null

/** A drawn list has the kinds it is drawn of as its items. */
export function drawnFrom(draft: Draft): void {
  const lists: Record<string, readonly Item[]> = {}
  const draws: Record<string, Draw> = {}
  for (const { key, value } of soundEntries(draft, 'lists')) {
    const draw = childOf(value, 'draw')
    if (draw?.is !== 'map') continue
    lists[key] = draw.entries.map((entry) => draft.place({ id: entry.key, properties: {} }, entry.value))
    draws[key] = draft.place(
      {
        counts: Object.fromEntries(draw.entries.map((entry) => [entry.key, numberOf(entry.value) ?? 0])),
        alikeInRow: numberOf(childOf(value, 'alike-in-row')),
        per: writtenOf(childOf(value, 'per')),
      },
      value,
    )
  }
  draft.lists = byName({ ...draft.lists, ...lists })
  draft.draws = byName(draws)
}

/** Fills the list `raters` with one item for each of them. */
export function ratersFrom(draft: Draft): Raters | null {
  const tree = childOf(draft.tree, 'raters')
  const count = numberOf(childOf(tree, 'count'))
  if (tree === null || count === null || draft.isBroken(tree)) return null
  const raters = Array.from({ length: count }, (_, index) => ({
    id: `rater_${index + 1}`,
    properties: { title: `${RATER_WORDS} ${index + 1}` },
  }))
  for (const { id, properties } of raters) givenWords(draft, `raters.${id}.title`, properties.title)
  draft.lists = byName({ ...draft.lists, raters })
  const says = (key: string): boolean => isTrue(childOf(tree, key))
  return draft.place({ count, unseen: says('unseen'), later: says('later') }, tree)
}
