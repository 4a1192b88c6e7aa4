/** Steps, sections and rules as the model has them, by what their kinds say of their own keys. */
import type { SectionKind } from '../../sections/kind.ts'
import type { Cue, StepKind } from '../../steps/kind.ts'
import type { Expression } from '../expressions/types.ts'
import type { CountsAs, Node, Outcome, Quantity, Rule, Section, Step, Text } from '../model.ts'
import { childOf, entryOf, type MapNode, plain, type Tree } from '../reader/tree.ts'
import { innerSteps } from '../schema/inner-steps.ts'
import { SECTION_KINDS, STEP_KINDS } from '../schema/kinds.ts'
import { convert } from '../units.ts'
import type { Draft } from './draft.ts'
import { found, put } from './paths.ts'
import {
  expressionFrom,
  isTrue,
  quantityFrom,
  quantityIn,
  type Standing,
  textFrom,
  valueFrom,
  writtenOf,
} from './values.ts'

/** All steps under the top-level key `steps` that can be made. */
export function stepsFrom(draft: Draft): readonly Node[] {
  const list = childOf(draft.tree, 'steps')
  return list?.is === 'list' ? nodesFrom(draft, list.items, []) : []
}

function nodesFrom(draft: Draft, items: readonly Tree[], around: readonly Section[]): readonly Node[] {
  return items.flatMap((item): readonly Node[] => {
    const first = item.is === 'map' ? item.entries[0] : undefined
    const name = first ? writtenOf(first.value) : null
    if (item.is !== 'map' || !first || name === null) return []
    const section = SECTION_KINDS.get(first.key)
    if (section) return [sectionFrom(draft, item, name, section, around)]
    if (draft.isBroken(item)) return []
    const step = STEP_KINDS.get(first.key)
    if (step) return [stepFrom(draft, item, name, step, around)]
    return first.key === 'rule' ? [ruleFrom(draft, item, name, around)] : []
  })
}

type Fields = Record<string, unknown>

/** The kind of section that each case of a choice is. */
const PART = 'group'

function sectionFrom(
  draft: Draft,
  tree: MapNode,
  name: string,
  kind: SectionKind,
  around: readonly Section[],
): Section {
  const fields: Fields = {}
  const steps: Node[] = []
  const section: Section = { node: 'section', kind: kind.kind, name, at: tree.at, fields, steps }
  draft.place(section, tree)
  const inner = innerSteps(tree)
  const within = [...around, section]
  if (
    !draft.isBroken(
      tree,
      inner.map(({ list }) => list),
    )
  ) {
    Object.assign(fields, plainFields(tree, kind.keys.shape))
    const standing = { around, each: [], owner: tree }
    textFields(draft, tree, name, kind.texts, standing, fields)
    valueFields(draft, tree, kind.values, standing, fields)
    formulaFields(draft, tree, kind.formulas ?? {}, standing, fields)
    for (const key of kind.conditions) {
      const value = childOf(tree, key)
      if (value) {
        fields[key] = expressionFrom(draft, value, key, { is: 'bool' }, { ...standing, around: within })
      }
    }
  }
  if (kind.chooses !== null) casesFrom(draft, tree, section, around, { fields, steps })
  else for (const { list } of inner) steps.push(...nodesFrom(draft, list.items, within))
  return section
}

/** Each case becomes a group of its own inside the section, named by its place, which no name of the file can be. */
function casesFrom(
  draft: Draft,
  tree: MapNode,
  section: Section,
  around: readonly Section[],
  { fields, steps }: { readonly fields: Fields; readonly steps: Node[] },
): void {
  const cases: { readonly when: Expression; readonly name: string }[] = []
  const within = [...around, section]
  let otherwise: string | null = null
  for (const { of, list } of innerSteps(tree)) {
    const name = of === tree ? `${section.name}:otherwise` : `${section.name}:${cases.length + 1}`
    const given: Node[] = []
    const part: Section = { node: 'section', kind: PART, name, at: of.at, fields: {}, steps: given }
    given.push(...nodesFrom(draft, list.items, [...within, part]))
    if (of === tree) otherwise = given.length > 0 ? name : null
    else {
      const when = childOf(of, 'when') ?? of
      const standing: Standing = { around, each: [], owner: tree }
      cases.push({ when: expressionFrom(draft, when, 'when', { is: 'bool' }, standing), name })
    }
    if (given.length > 0) steps.push(draft.place(part, of === tree ? list : of))
  }
  Object.assign(fields, { cases, otherwise })
}

function stepFrom(
  draft: Draft,
  tree: MapNode,
  name: string,
  kind: StepKind,
  around: readonly Section[],
): Step {
  const fields: Fields = plainFields(tree, kind.keys.shape)
  const own = (key: string): Tree | null => (Object.hasOwn(kind.keys.shape, key) ? null : childOf(tree, key))
  const text = own('text')
  const voids = own('voids')
  const maySay = own('may-say')
  const standing: Standing = { around, each: [], owner: tree }
  textFields(draft, tree, name, kind.texts, standing, fields)
  for (const key of kind.cues) {
    const value = childOf(tree, key)
    if (value) fields[key] = cueFrom(draft, value, `${name}.${key}`, standing)
  }
  valueFields(draft, tree, kind.values, standing, fields)
  formulaFields(draft, tree, kind.formulas ?? {}, standing, fields)
  const unit = Object.hasOwn(kind.keys.shape, 'unit') ? childOf(tree, 'unit') : null
  if (unit) draft.units.push({ unit: writtenOf(unit) ?? '', at: unit.at })
  const countsAs: Partial<Record<Outcome, CountsAs>> = {}
  const step: Step = {
    node: 'step',
    kind: kind.kind,
    name,
    at: tree.at,
    fields,
    text: text ? textFrom(draft, text, `${name}.text`, standing) : null,
    figure: writtenOf(own('figure')),
    of: writtenOf(own('of')),
    practice: isTrue(own('practice')),
    voids: voids?.is === 'scalar' && typeof voids.value === 'number' ? voids.value : null,
    countsAs,
    maySay: maySay?.is === 'list' ? saysFrom(draft, maySay.items, name, standing) : [],
  }
  Object.assign(countsAs, countsAsFrom(draft, own('counts-as'), unitOfFirst(kind, step), standing))
  return draft.place(step, tree)
}

function saysFrom(draft: Draft, items: readonly Tree[], name: string, standing: Standing): readonly Text[] {
  return items.map((item, index) => textFrom(draft, item, `${name}.may-say.${index + 1}`, standing))
}

function unitOfFirst(kind: StepKind, step: Step): string | null {
  const first = Object.values(kind.columns(step))[0]
  return first?.is === 'number' ? first.unit : null
}

const OVER = /^over\s+/

/** `counts-as` by outcome; a value alone is that of the outcome `limit`. Bare numbers take the column's unit. */
function countsAsFrom(
  draft: Draft,
  tree: Tree | null,
  unit: string | null,
  standing: Standing,
): Readonly<Record<string, CountsAs>> {
  if (!tree) return {}
  const entries = tree.is === 'map' && !entryOf(tree, 'from') ? tree.entries : [{ key: 'limit', value: tree }]
  return Object.fromEntries(
    entries.map(({ key, value }) => {
      const written = writtenOf(value) ?? ''
      const over = OVER.test(written)
      if (over) {
        const quantity = quantityIn(written.replace(OVER, '')) ?? { value: Number.NaN, unit: '1' }
        draft.units.push({ unit: quantity.unit, at: value.at })
        return [key, { value: { is: inUnit(quantity, unit) }, over }]
      }
      const from = childOf(value, 'from')
      if (!from) return [key, { value: { is: inUnit(quantityFrom(draft, value), unit) }, over }]
      const wanted = { is: 'number', unit } as const
      return [key, { value: { from: expressionFrom(draft, from, 'counts-as', wanted, standing) }, over }]
    }),
  )
}

/** The quantity in the column's unit where it converts; as it was where it doesn't, for a check to tell. */
function inUnit(quantity: Quantity, unit: string | null): Quantity {
  if (unit === null || quantity.unit === unit) return quantity
  if (quantity.unit === '1') return { value: quantity.value, unit }
  const value = convert(quantity.value, quantity.unit, unit)
  return value === null ? quantity : { value, unit }
}

function cueFrom(draft: Draft, tree: Tree, key: string, standing: Standing): Cue {
  for (const by of ['said', 'seen'] as const) {
    const value = childOf(tree, by)
    if (value) return { by, text: textFrom(draft, value, key, standing) }
  }
  return { by: null, text: textFrom(draft, tree, key, standing) }
}

function ruleFrom(draft: Draft, tree: MapNode, name: string, around: readonly Section[]): Rule {
  const standing: Standing = { around, each: [], owner: tree }
  const text = (key: string): Text | null => {
    const value = childOf(tree, key)
    return value ? textFrom(draft, value, `${name}.${key}`, standing) : null
  }
  const credit = childOf(tree, 'credit')
  const rule: Rule = {
    node: 'rule',
    name,
    at: tree.at,
    when: expressionFrom(draft, childOf(tree, 'when') ?? tree, 'when', { is: 'bool' }, standing),
    end: writtenOf(childOf(tree, 'end')),
    credit: credit ? (plain(credit) as Record<string, number>) : {},
    confirm: text('confirm'),
    note: text('note'),
  }
  return draft.place(rule, tree)
}

function plainFields(tree: MapNode, shape: Readonly<Record<string, unknown>>): Fields {
  const fields: Fields = {}
  for (const { key, value } of tree.entries.slice(1)) {
    if (key !== 'steps' && Object.hasOwn(shape, key)) fields[key] = plain(value)
  }
  return fields
}

/** Texts by key or by a path into a map (`options.*`), each under its own key. */
function textFields(
  draft: Draft,
  tree: MapNode,
  name: string,
  paths: readonly string[],
  standing: Standing,
  fields: Fields,
): void {
  for (const { tree: value, keys } of paths.flatMap((path) => found(tree, path))) {
    put(fields, keys, textFrom(draft, value, [name, ...keys].join('.'), standing))
  }
}

/** Values by key or by a path into a map (`times.least`), each as it is or from an expression. */
function valueFields(
  draft: Draft,
  tree: MapNode,
  values: StepKind['values'],
  standing: Standing,
  fields: Fields,
): void {
  for (const [path, kind] of Object.entries(values)) {
    for (const { tree: value, keys } of found(tree, path)) {
      if (value.is === 'map' && !entryOf(value, 'from')) continue
      put(fields, keys, valueFrom(draft, value, keys.at(-1) ?? path, kind, standing))
    }
  }
}

/** Expressions by key, or behind `{ from }`: `allow: { from: … }`. What is written out stays as it is. */
function formulaFields(
  draft: Draft,
  tree: MapNode,
  formulas: NonNullable<StepKind['formulas']>,
  standing: Standing,
  fields: Fields,
): void {
  for (const [path, wanted] of Object.entries(formulas)) {
    for (const { tree: value, keys } of found(tree, path)) {
      put(fields, keys, expressionFrom(draft, value, keys[0] ?? path, wanted, standing))
    }
  }
}
