/**
 * What of an administration can still change the way on: two states that agree in it go on alike, and are walked once.
 * Everything here is worked out from the file: which rows the conditions, rules and values that are still to come see.
 */
import { comparedNumbers, type Meanings } from '../language/expressions/compared.ts'
import { type NameRead, readsIn } from '../language/expressions/reads-in.ts'
import type { Expression } from '../language/expressions/types.ts'
import type { Protocol } from '../language/model.ts'
import { isSheet, stepsOnSheet } from '../language/sheet.ts'
import { sectionKind } from '../runner/due.ts'
import type { Place } from '../runner/events.ts'
import { listOf } from '../runner/grown.ts'
import { isPartOf } from '../runner/places.ts'
import type { State } from '../runner/state.ts'
import { spotOf, type Tree, treeOf } from '../runner/tree.ts'
import type { Trial } from '../runner/view.ts'
import { outlineOf } from '../scoring/outline.ts'
import type { Compared } from '../steps/kind.ts'

/** Rows of a step that an expression sees, wherever these loops agree with where it stands. */
interface Sees {
  readonly step: string
  readonly loops: readonly string[]
  /** The only column that is looked at; null: any. */
  readonly column: string | null
  /** Where nothing but the first or the last of the rows counts. */
  readonly end: NameRead['end']
}

/** What a condition or a formula rests on, by way of scores too; and the conditions that lead to where that is given. */
interface Behind {
  readonly steps: ReadonlySet<string>
  readonly conditions: ReadonlySet<string>
}

export interface Relevance {
  /** A text that is the same for states that go on alike. */
  keyOf(state: State): string
  /** The numbers that a step's columns are compared with anywhere in the file. */
  comparedOf(step: string): Compared
  /** Of a rule or a score. */
  behind(name: string): Behind
}

/** All expressions within a part of the protocol. */
function expressionsIn(part: unknown): readonly Expression[] {
  if (typeof part !== 'object' || part === null) return []
  if ('tree' in part && 'source' in part && 'reads' in part) return [part as Expression]
  return Object.values(part).flatMap(expressionsIn)
}

export function relevanceOf(protocol: Protocol): Relevance {
  const tree = treeOf(protocol)
  const all = distinct([...tree.spots.keys()].flatMap((name) => seenBy(protocol, tree, name)))
  const pages = pagesOf(protocol)
  const numbers = numbersOf(protocol)
  return {
    keyOf: (state) => `${keyOf(state, all)} ${filledIn(state, pages)}`,
    comparedOf: (step) => (column) => numbers.get(`${step}.${column}`) ?? [],
    behind: (name) => behind(protocol, tree, name),
  }
}

const distinct = (seen: readonly Sees[]): readonly Sees[] => [
  ...new Map(seen.map((one) => [JSON.stringify(one), one])).values(),
]

/** What a rule or a section, or the values of a step, see: all that may change the way. */
function seenBy(protocol: Protocol, tree: Tree, name: string): readonly Sees[] {
  const { node, around } = spotOf(tree, name)
  const loops = around.flatMap((section) => tree.keys.get(section.name) ?? [])
  const own =
    node.node === 'rule' ? node.when : { ...node.fields, ...('countsAs' in node ? node.countsAs : {}) }
  const seen = expressionsIn(own).flatMap((expression) => seenIn(protocol, expression, loops, []))
  // A section's condition is judged of one pass after the other.
  return node.node === 'section' ? seen.map(whole) : seen
}

/** Not one row at its end, but each with its place: for what is worked out place by place. */
const whole = (sees: Sees): Sees => ({ ...sees, column: null, end: null })

/** A score sees no more loops than its own; what it reads is seen by what reads it. */
function seenIn(
  protocol: Protocol,
  expression: Expression,
  loops: readonly string[],
  within: readonly string[],
): readonly Sees[] {
  const { steps, scores } = outlineOf(protocol)
  return readsIn(expression).flatMap(({ name, column, end }) => {
    if (steps.has(name)) return [{ step: name, loops, column, end }]
    const score = within.includes(name) ? undefined : scores.get(name)
    if (score === undefined)
      return stepsOfTable(protocol, name).map((step) => ({ step, loops, column: null, end: null }))
    const own = loops.filter((loop) => score.each.includes(loop))
    const under = [score.value, ...(score.needs === null ? [] : [score.needs])].flatMap((formula) =>
      seenIn(protocol, formula, own, [...within, name]),
    )
    return own.length < score.each.length ? under.map(whole) : under
  })
}

/** The steps that the table of a section rests on; none for a section that finds nothing, whose name is an item. */
function stepsOfTable(protocol: Protocol, name: string): readonly string[] {
  const { sections, inside } = outlineOf(protocol)
  const section = sections.get(name)
  return section === undefined || sectionKind(section).found === null
    ? []
    : [...(inside.get(name)?.steps ?? [])]
}

function behind(protocol: Protocol, tree: Tree, name: string): Behind {
  const { steps, scores } = outlineOf(protocol)
  const names = new Set(expressionsIn(tree.spots.get(name)?.node ?? scores.get(name)).flatMap(readsOf))
  // A set that is gone through also gives what is added on the way.
  for (const read of names) {
    for (const further of expressionsIn(scores.get(read)).flatMap(readsOf)) names.add(further)
    for (const step of stepsOfTable(protocol, read)) names.add(step)
  }
  const around = [name, ...names].flatMap((each) => tree.spots.get(each)?.around ?? [])
  const leading = new Set(around.flatMap(({ fields }) => expressionsIn(fields)).flatMap(readsOf))
  return {
    steps: new Set([...names].filter((each) => steps.has(each))),
    conditions: new Set(
      protocol.conditions.map((each) => each.name).filter((each) => names.has(each) || leading.has(each)),
    ),
  }
}

const readsOf = ({ reads }: Expression): readonly string[] => reads

function numbersOf(protocol: Protocol): ReadonlyMap<string, readonly number[]> {
  const { scores } = outlineOf(protocol)
  const meanings: Meanings = {
    score: (name) => scores.get(name)?.value ?? null,
    numbers: (name) =>
      (protocol.conditions.find((condition) => condition.name === name)?.options ?? []).flatMap(
        ({ value }) => (typeof value === 'object' ? [value.value] : []),
      ),
  }
  const found = new Map<string, Set<number>>()
  for (const expression of expressionsIn([protocol.steps, protocol.scores])) {
    for (const { step, column, n } of comparedNumbers(expression, meanings)) {
      const key = `${step}.${column}`
      found.set(key, (found.get(key) ?? new Set()).add(n))
    }
  }
  return new Map([...found].map(([key, values]) => [key, [...values].sort((a, b) => a - b)]))
}

/** A loop that was left is never come back to in the same pass. */
const isSeen = (place: Place, from: Place, loops: readonly string[]): boolean =>
  loops.every((loop) => !Object.hasOwn(place, loop) || place[loop] === from[loop])

function keyOf(state: State, seen: readonly Sees[]): string {
  const { at, visit, place, closedHands } = state
  const rows = Map.groupBy(
    listOf(state.trials).filter(({ status, practice }) => status === 'standing' && !practice),
    ({ step }) => step,
  )
  const relevant = seen.map((sees) => {
    const visible = (rows.get(sees.step) ?? []).filter((trial) => isSeen(trial.place, place, sees.loops))
    return atEnd(visible, sees.end).map((trial) => seenOf(trial, sees))
  })
  const here = JSON.stringify(place)
  const rests = listOf(state.ends).flatMap((end) => (JSON.stringify(end.place) === here ? [end.step] : []))
  const orders = listOf(state.orders).map(({ section, place: around, items }) => [section, around, items])
  return JSON.stringify([
    at,
    visit?.step,
    visit?.state,
    place,
    orders,
    closedHands,
    relevant,
    [...new Set(rests)],
  ])
}

/** The steps of each page, by the name of its section. */
const pagesOf = (protocol: Protocol): ReadonlyMap<string, ReadonlySet<string>> =>
  new Map(
    [...treeOf(protocol).spots.values()].flatMap(({ node }) =>
      node.node === 'section' && isSheet(node)
        ? [[node.name, new Set(stepsOnSheet(node).map(({ name }) => name))] as const]
        : [],
    ),
  )

/** How many cells of the page at hand are filled in: they are walked in the order of the protocol. */
function filledIn({ at, place, trials }: State, pages: ReadonlyMap<string, ReadonlySet<string>>): number {
  const page = pages.get(at)
  if (page === undefined) return 0
  return listOf(trials).filter(
    (trial) => trial.status === 'standing' && page.has(trial.step) && isPartOf(place, trial.place),
  ).length
}

const atEnd = (rows: readonly Trial[], end: Sees['end']): readonly Trial[] =>
  end === null ? rows : end === 'first' ? rows.slice(0, 1) : rows.slice(-1)

/** Where all of a row may be looked at, its place is told too: it is a column like any other. */
const seenOf = ({ place, outcome, readings }: Trial, { column }: Sees) => [
  outcome,
  column === null ? place : null,
  Object.entries(readings).flatMap(([name, { value, over }]) =>
    column === null || name === column ? [[name, value, over]] : [],
  ),
]
