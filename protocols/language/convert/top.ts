/** Everything at the top of a protocol file but its steps, scores, norms and change figures. */
import type { About, Condition, ConditionOption, Happening, Item, Quantity, Text } from '../model.ts'
import { drawnFrom, ratersFrom } from './lists.ts'
import { childOf, entryOf, plain, type Tree } from '../reader/tree.ts'
import { BUILT_IN } from '../schema/top.ts'
import { convert } from '../units.ts'
import { BUILT_IN_WORDS } from './built-in-words.ts'
import type { Draft } from './draft.ts'
import {
  givenWords,
  isTrue,
  pairOf,
  quantityFrom,
  quantityIn,
  soundEntries,
  soundItems,
  wordsFrom,
  writtenOf,
} from './values.ts'

/** Fills the draft's pieces from the top-level keys; what a problem was reported in is left out. */
export function topFrom(draft: Draft): void {
  const title = childOf(draft.tree, 'title')
  if (title) wordsFrom(draft, title, 'title')
  draft.about = aboutFrom(draft)
  draft.precautions = soundItems(draft, 'precautions').map(({ item }) => {
    const id = writtenOf(childOf(item, 'id')) ?? ''
    const why = childOf(item, 'why')
    const key = `precautions.${id}`
    const ask = wordsFrom(draft, childOf(item, 'ask'), `${key}.ask`)
    return draft.place({ id, ask, why: why ? wordsFrom(draft, why, `${key}.why`) : null }, item)
  })
  draft.sources = soundEntries(draft, 'sources').map(({ key, value }) => {
    const { cite, seen, note } = plain(value) as {
      cite: string
      seen: 'seen' | 'memory' | 'abstract'
      note?: string
    }
    return draft.place({ id: key, cite, seen, note: note ?? '' }, value)
  })
  draft.kit = soundEntries(draft, 'kit').map(({ key, value }) => {
    const check = childOf(value, 'check')
    const text = wordsFrom(draft, childOf(value, 'text'), `kit.${key}.text`)
    const looked = check ? wordsFrom(draft, check, `kit.${key}.check`) : null
    return draft.place(
      { id: key, text, check: looked, registered: isTrue(childOf(value, 'registered')) },
      value,
    )
  })
  draft.conditions = soundEntries(draft, 'conditions').map(({ key, value }) =>
    conditionFrom(draft, key, value),
  )
  draft.lists = Object.fromEntries(
    soundEntries(draft, 'lists').map(({ key, value }) => [key, itemsFrom(draft, value)]),
  )
  drawnFrom(draft)
  draft.raters = ratersFrom(draft)
  draft.happenings = [...happeningsFrom(draft), ...builtInFrom(draft)]
  draft.accommodations = soundEntries(draft, 'accommodations').map(({ key, value }) =>
    draft.place({ id: key, text: wordsFrom(draft, value, `accommodations.${key}`) }, value),
  )
  draft.cautions = soundItems(draft, 'cautions').map(({ item, position }) =>
    wordsFrom(draft, item, `cautions.${position + 1}`),
  )
}

const USUAL_GAP_MINUTES = 15

function aboutFrom(draft: Draft): About | null {
  const tree = childOf(draft.tree, 'about')
  if (!tree || draft.isBroken(tree)) return null
  const text = (key: string): Text | null => {
    const value = childOf(tree, key)
    return value ? wordsFrom(draft, value, `about.${key}`) : null
  }
  const gap = childOf(tree, 'longest-gap')
  return draft.place(
    {
      purpose: wordsFrom(draft, childOf(tree, 'purpose'), 'about.purpose'),
      measures: textsOf(childOf(tree, 'measures')),
      minutes: pairOf(childOf(tree, 'minutes')) ?? [0, 0],
      suits: wordsFrom(draft, childOf(tree, 'suits'), 'about.suits'),
      floor: text('floor'),
      ceiling: text('ceiling'),
      needs: textsOf(childOf(tree, 'needs')),
      longestGapMinutes: gap ? minutesOf(quantityFrom(draft, gap)) : USUAL_GAP_MINUTES,
    },
    tree,
  )
}

/** A bare number is of minutes; a unit that measures no time is told by the check `gap_not_a_time`. */
function minutesOf({ value, unit }: Quantity): number {
  return unit === '1' ? value : (convert(value, unit, 'min') ?? USUAL_GAP_MINUTES)
}

function textsOf(tree: Tree | null): readonly string[] {
  return tree?.is === 'list' ? tree.items.flatMap((item) => writtenOf(item) ?? []) : []
}

function conditionFrom(draft: Draft, name: string, tree: Tree): Condition {
  const fixed = childOf(tree, 'is')
  const usual = writtenOf(childOf(tree, 'usual'))
  const by = writtenOf(childOf(tree, 'set-by')) as 'kit' | 'clinic' | 'examiner' | null
  const common = { name, at: entryOf(childOf(draft.tree, 'conditions'), name)?.keyAt ?? tree.at }
  if (fixed) {
    const option = literalOption(draft, fixed)
    return draft.place({ ...common, setBy: 'file', options: [option], usual: option.id }, tree)
  }
  const options = childOf(tree, 'options')
  const values = childOf(tree, 'values')
  const made: readonly ConditionOption[] =
    options?.is === 'map'
      ? options.entries.map(({ key, value }) => ({
          id: key,
          text: wordsFrom(draft, value, `conditions.${name}.${key}`),
          value: key,
        }))
      : values?.is === 'list'
        ? values.items.map((item) => literalOption(draft, item))
        : []
  return draft.place({ ...common, setBy: by ?? 'file', options: made, usual }, tree)
}

/** `60 s` is a quantity, `3` a bare number, `first_touch` a text; each is recorded as written. */
function literalOption(draft: Draft, tree: Tree): ConditionOption {
  const id = writtenOf(tree) ?? ''
  const isNumber = tree.is === 'scalar' && typeof tree.value === 'number'
  const quantity = isNumber ? { value: Number(tree.value), unit: '1' } : quantityIn(id)
  if (quantity && !isNumber) draft.units.push({ unit: quantity.unit, at: tree.at })
  return { id, text: null, value: quantity ?? id }
}

function itemsFrom(draft: Draft, tree: Tree): readonly Item[] {
  if (tree.is !== 'list') return []
  return tree.items.map((item) => {
    const id = writtenOf(childOf(item, 'id')) ?? ''
    const properties: Record<string, string | number | boolean | Quantity> = {}
    for (const { key, value } of item.is === 'map' ? item.entries : []) {
      if (key === 'id' || value.is !== 'scalar' || value.value === null) continue
      properties[key] = propertyOf(draft, value.value, value)
    }
    return draft.place({ id, properties }, item)
  })
}

function propertyOf(
  draft: Draft,
  value: string | number | boolean,
  tree: Tree,
): string | number | boolean | Quantity {
  if (typeof value !== 'string') return value
  const quantity = quantityIn(value)
  if (quantity) draft.units.push({ unit: quantity.unit, at: tree.at })
  return quantity ?? value
}

function happeningsFrom(draft: Draft): readonly Happening[] {
  return soundEntries(draft, 'happenings').map(({ key, value }) => {
    const toDo = childOf(value, 'do')
    const adds = childOf(value, 'adds')
    return draft.place(
      {
        name: key,
        seen: wordsFrom(draft, childOf(value, 'seen'), `happenings.${key}.seen`),
        do: toDo ? wordsFrom(draft, toDo, `happenings.${key}.do`) : null,
        becomes: (writtenOf(childOf(value, 'then')) ?? 'go-on') as Happening['becomes'],
        key: writtenOf(childOf(value, 'key')),
        adds: adds ? quantityFrom(draft, adds) : null,
        builtIn: (BUILT_IN as readonly string[]).includes(key),
      },
      value,
    )
  })
}

/** The reasons every protocol has: unless it forbids them, or words them itself. */
function builtInFrom(draft: Draft): readonly Happening[] {
  const forbidden = new Set(textsOf(childOf(draft.tree, 'forbids')))
  const own = childOf(draft.tree, 'happenings')
  return BUILT_IN.filter((id) => !forbidden.has(id) && !entryOf(own, id)).map((id) => ({
    name: id,
    seen: givenWords(draft, `happenings.${id}.seen`, BUILT_IN_WORDS[id]),
    do: null,
    becomes: 'void',
    key: null,
    adds: null,
    builtIn: true,
  }))
}
