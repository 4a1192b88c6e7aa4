/**
 * What of an administration can still change the way on: two states that agree in it go on alike, and are walked once.
 * Everything here is worked out from the file: which rows the conditions, rules and values that are still to come see.
 */
import { comparedNumbers, type Meanings } from '../language/expressions/compared.ts'
import type { Expression } from '../language/expressions/types.ts'
import type { Protocol } from '../language/model.ts'
import { isSheet, stepsOnSheet } from '../language/sheet.ts'
import type { Place } from '../runner/events.ts'
import { listOf } from '../runner/grown.ts'
import type { State } from '../runner/state.ts'
import { isPartOf } from '../runner/places.ts'
import { treeOf } from '../runner/tree.ts'
import type { Trial } from '../runner/view.ts'
import { outlineOf } from '../scoring/outline.ts'
import type { Compared } from '../steps/kind.ts'

/** Rows of a step that an expression sees, wherever these loops agree with where it stands. */
interface Sees {
  readonly step: string
  readonly loops: readonly string[]
}

export interface Relevance {
  /** A text that is the same for states that go on alike. */
  keyOf(state: State): string
  /** The numbers that a step's columns are compared with anywhere in the file. */
  comparedOf(step: string): Compared
}

/** All expressions within a part of the protocol. */
function expressionsIn(part: unknown): readonly Expression[] {
  if (typeof part !== 'object' || part === null) return []
  if ('tree' in part && 'source' in part && 'reads' in part) return [part as Expression]
  return Object.values(part).flatMap(expressionsIn)
}

export function relevanceOf(protocol: Protocol): Relevance {
  const seen = seenByWays(protocol)
  const pages = pagesOf(protocol)
  const numbers = numbersOf(protocol)
  return {
    keyOf: (state) => `${keyOf(state, seen)} ${filledIn(state, pages)}`,
    comparedOf: (step) => (column) => numbers.get(`${step}.${column}`) ?? [],
  }
}

/** What rules and sections, and values of steps, see: all that may change the way. */
function seenByWays(protocol: Protocol): readonly Sees[] {
  const { spots, keys } = treeOf(protocol)
  return [...spots.values()].flatMap(({ node, around }) => {
    const loops = around.flatMap(({ name }) => keys.get(name) ?? [])
    const own =
      node.node === 'rule' ? node.when : { ...node.fields, ...('countsAs' in node ? node.countsAs : {}) }
    return expressionsIn(own).flatMap((expression) => seenBy(protocol, expression, loops, []))
  })
}

/** A score sees no more loops than its own; what it reads is seen by what reads it. */
function seenBy(
  protocol: Protocol,
  { reads }: Expression,
  loops: readonly string[],
  within: readonly string[],
): readonly Sees[] {
  const { steps, scores } = outlineOf(protocol)
  return reads.flatMap((name) => {
    const score = within.includes(name) ? undefined : scores.get(name)
    if (score === undefined) return steps.has(name) ? [{ step: name, loops }] : []
    const own = loops.filter((loop) => score.each.includes(loop))
    return [score.value, ...(score.needs === null ? [] : [score.needs])].flatMap((formula) =>
      seenBy(protocol, formula, own, [...within, name]),
    )
  })
}

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
  const { at, visit, place } = state
  const rows = listOf(state.trials)
    .filter(({ status, practice }) => status === 'standing' && !practice)
    .filter((trial) =>
      seen.some(({ step, loops }) => step === trial.step && isSeen(trial.place, place, loops)),
    )
    .map(rowOf)
  const ends = new Set(listOf(state.ends).map((end) => `${end.step} ${JSON.stringify(end.place)}`))
  const resting = [...ends].filter((end) => end.endsWith(` ${JSON.stringify(place)}`))
  const orders = listOf(state.orders).map(({ section, place: around, items }) => [section, around, items])
  return JSON.stringify([at, visit?.step, visit?.state, place, orders, state.closedHands, rows, resting])
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

const rowOf = ({ step, place, outcome, readings }: Trial) => [
  step,
  place,
  outcome,
  Object.entries(readings).map(([column, { value, over }]) => [column, value, over]),
]
