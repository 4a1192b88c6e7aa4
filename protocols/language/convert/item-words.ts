/** Which properties of list items are words that somebody reads: those that a text is taken from. */
import { parseExpression, type Tree as Formula } from '../expressions/index.ts'
import { passesOf } from '../passes.ts'
import { childOf } from '../reader/tree.ts'
import type { Draft } from './draft.ts'
import { wordsFrom, writtenOf } from './values.ts'

/**
 * Gives `<list>.<item>.<property>` a text key for each property that some `text: { from: item.property }`
 * reads, and to each `title`, which is what a screen calls the item: so that a wording file can translate it. Other
 * properties are data.
 */
export function itemWordsFrom(draft: Draft): void {
  for (const list of Object.keys(draft.lists)) wordsOfList(draft, list, 'title')
  for (const { hole, around, wanted } of draft.expressions) {
    if (wanted.is !== 'text') continue
    const { tree } = parseExpression(hole.source)
    for (const { name, property } of tree ? fieldsIn(tree) : []) {
      const loops = around.flatMap((section) => passesOf(section, draft.draws) ?? [])
      const list = loops.find(({ loop }) => loop === name)?.list
      if (typeof list === 'string') wordsOfList(draft, list, property)
    }
  }
}

function wordsOfList(draft: Draft, list: string, property: string): void {
  const items = childOf(childOf(draft.tree, 'lists'), list)
  if (items?.is !== 'list') return
  for (const item of items.items) {
    const words = childOf(item, property)
    const id = writtenOf(childOf(item, 'id'))
    if (id !== null && words?.is === 'scalar' && typeof words.value === 'string') {
      wordsFrom(draft, words, `${list}.${id}.${property}`)
    }
  }
}

/** `task.say`, also as a branch of `a ? task.say : task.other`. */
function fieldsIn(tree: Formula): readonly { readonly name: string; readonly property: string }[] {
  if (tree.is === 'if') return [...fieldsIn(tree.yes), ...fieldsIn(tree.no)]
  return tree.is === 'field' && tree.of.is === 'name' ? [{ name: tree.of.name, property: tree.name }] : []
}
