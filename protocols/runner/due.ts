/** Which steps are still due: what a closed hand, an ended section or an ended test cuts off. */
import { NOTHING_KNOWN, SIDES } from '../client.ts'
import type { Node, Outcome, Protocol, Section, Step } from '../language/model.ts'
import { passAt, passesOf, turnKey } from '../language/passes.ts'
import { SECTION_KINDS, STEP_KINDS } from '../language/schema/kinds.ts'
import type { Passes, SectionKind } from '../sections/kind.ts'
import type { ListOrder, PassId, SectionChart, SectionMoment } from './chart-parts.ts'
import { drawnBefore, pathOf } from './drawn.ts'
import type { Place } from './events.ts'
import { newest } from './grown.ts'
import { isOverRaters } from './raters.ts'
import type { Judging } from './judging.ts'
import { samePlace } from './places.ts'
import type { State } from './state.ts'
import { spotOf, type Tree } from './tree.ts'

export interface Due {
  readonly step: Step
  readonly place: Place
  /** The outcome that is settled already, such as that of a hand that isn't there. */
  readonly outcome: Outcome | null
}

/** What the parts of the runner share: the protocol, its tree and how its expressions are judged. */
export interface Ground {
  readonly protocol: Protocol
  readonly tree: Tree
  readonly judging: Judging
}

export function sectionKind(section: Section): SectionKind {
  const kind = SECTION_KINDS.get(section.kind)
  if (kind === undefined) throw new Error(`There is no kind of section ${section.kind}.`)
  return kind
}

/** How the passes of a section come. */
export function sectionChart(section: Section): SectionChart {
  const { chart } = sectionKind(section)
  if (chart === null) throw new Error(`${section.name} has no passes.`)
  return chart
}

/** True for steps whose trials become rows. */
export const isTrial = (step: Step): boolean =>
  !step.practice && Object.keys(STEP_KINDS.get(step.kind)?.columns(step) ?? {}).length > 0

/** A place with only the loops around a node. */
export function placeAround(tree: Tree, name: string, place: Place): Place {
  const around: Record<string, string | number> = {}
  for (const section of spotOf(tree, name).around) {
    for (const key of tree.keys.get(section.name) ?? []) {
      const pass = place[key]
      if (pass !== undefined) around[key] = pass
    }
  }
  return around
}

/** The loop that a section is. */
export function loopOf({ protocol }: Ground, section: Section): Passes {
  const passes = passesOf(section, protocol.draws)
  if (passes === null) throw new Error(`${section.name} has no passes.`)
  return passes
}

/** The place of a pass. `turn`: which one it is, from 1. */
export const placeOfPass = (
  ground: Ground,
  section: Section,
  around: Place,
  pass: PassId,
  turn: number,
): Place => ({ ...around, ...passAt(loopOf(ground, section), pass, turn) })

/** The order that was recorded for a section as seen from a place inside or around it. */
function orderAt(state: State, section: string, around: Place): ListOrder | null {
  return newest(state.orders, (each) => each.section === section && samePlace(each.place, around))
}

function itemsOf(protocol: Protocol, list: string | null): readonly string[] {
  if (list === 'hands') return SIDES
  return list === null ? [] : (protocol.lists[list] ?? []).map(({ id }) => id)
}

/** For sections without passes: no place has such a key. */
const NO_PASSES: Passes = { loop: '', list: null, numbered: false }

/** Names of the sections that go through a list. */
const sectionsOver = ({ tree, protocol }: Ground, list: string | null): ReadonlySet<string> =>
  new Set(
    [...tree.spots.values()].flatMap(({ node }) =>
      node.node === 'section' && passesOf(node, protocol.draws)?.list === list ? [node.name] : [],
    ),
  )

/** The part of a place that has a bag of its own. */
function bagOf({ protocol }: Ground, list: string | null, around: Place): Place {
  const per = (list !== null && protocol.draws[list]?.per) || null
  const pass = per === null ? undefined : around[per]
  return per === null || pass === undefined ? {} : { [per]: pass }
}

export function sectionMoment(ground: Ground, state: State, section: Section, place: Place): SectionMoment {
  const around = placeAround(ground.tree, section.name, place)
  const passes = passesOf(section, ground.protocol.draws)
  const { loop, list, numbered } = passes ?? NO_PASSES
  const pass = place[loop] ?? null
  const turn = numbered ? Number(place[turnKey(loop)] ?? 0) : 0
  const seenFrom = (from: PassId): Place =>
    passes !== null && from === pass
      ? { ...around, ...passAt(passes, from, turn) }
      : { ...around, [loop]: from }
  return {
    section,
    around,
    pass,
    turn,
    draw: (list !== null && ground.protocol.draws[list]) || null,
    drawn: () => drawnBefore(state, sectionsOver(ground, list), bagOf(ground, list, around)),
    path: () => pathOf(state, section.name, around).slice(0, turn),
    facts: state.facts ?? NOTHING_KNOWN,
    order: orderAt(state, section.name, around),
    items: itemsOf(ground.protocol, list),
    holds: (condition, from) =>
      ground.judging.holds(state, condition, from === null ? around : seenFrom(from)),
    text: (expression) => ground.judging.text(state, expression, around),
    count: (from) => ground.judging.count(state, from, around),
  }
}

/** All steps due within a node that is still to come. */
function* within(ground: Ground, state: State, node: Node, place: Place): Generator<Due> {
  if (node.node === 'step') yield { step: node, place, outcome: null }
  if (node.node !== 'section') return
  const moment = sectionMoment(ground, state, node, place)
  const { chart, chooses } = sectionKind(node)
  if (chart === null) {
    const part = chooses?.(moment).part
    for (const each of node.steps) {
      if (part === undefined || part === each.name) yield* within(ground, state, each, place)
    }
    return
  }
  if (moment.order === null) {
    for (const item of chart.leftOut(moment))
      yield* withinPass(ground, state, node, { place, pass: item, turn: 1, outcome: 'absent' })
  }
  const leftOut = chart.leftOut(moment)
  for (const [index, item] of chart.due(moment).entries()) {
    if (leftOut.includes(String(item))) continue
    const outcome = closedAs(state, node, item)
    yield* withinPass(ground, state, node, { place, pass: item, turn: moment.turn + index + 1, outcome })
  }
}

interface PassDue {
  readonly place: Place
  readonly pass: PassId
  /** Which pass it is, from 1. */
  readonly turn: number
  readonly outcome: Outcome | null
}

function* withinPass(ground: Ground, state: State, section: Section, due: PassDue): Generator<Due> {
  const place = placeOfPass(ground, section, due.place, due.pass, due.turn)
  for (const node of section.steps) {
    for (const trial of within(ground, state, node, place)) {
      yield due.outcome === null ? trial : { ...trial, outcome: due.outcome }
    }
  }
}

/** All steps of one pass of a section whose items come once. */
export const dueInPass = (
  ground: Ground,
  state: State,
  section: Section,
  place: Place,
  id: PassId,
): Due[] => [...withinPass(ground, state, section, { place, pass: id, turn: 1, outcome: null })]

/** What becomes of a hand that was closed before, and of a rater who rates another day; null for all others. */
export function closedAs(state: State, section: Section, item: PassId): Outcome | null {
  if (section.fields.in === 'hands') return state.closedHands[item] ?? null
  return isOverRaters(section) && state.putOff.includes(String(item)) ? 'pending' : null
}

/** What is due at the node at hand: a step itself unless its trial is in flight, the steps of a section that waits to begin. */
export function dueAt(ground: Ground, state: State): Due[] {
  const { node } = spotOf(ground.tree, state.at)
  if (node.node === 'rule' || (node.node === 'step' && state.flight !== null)) return []
  return [...within(ground, state, node, placeAround(ground.tree, node.name, state.place))]
}

/** What is due in a section as a whole, given or not. */
export const dueIn = (ground: Ground, state: State, section: Section): Due[] => [
  ...within(ground, state, section, placeAround(ground.tree, section.name, state.place)),
]

/** How far what is cut off reaches: the pass of a section, a whole section, or everything (`null`). */
export interface Reach {
  readonly section: string | null
  readonly laterPasses: boolean
}

/** True where a trial stands for what is due. */
export const hasRow = (state: State, { step, place }: Pick<Due, 'step' | 'place'>): boolean =>
  newest(
    state.trials,
    (trial) => trial.status === 'standing' && trial.step === step.name && samePlace(trial.place, place),
  ) !== null

/** True for a pass of which something was given, or closed, already. */
export const isGiven = (ground: Ground, state: State, section: Section, around: Place, id: PassId): boolean =>
  dueInPass(ground, state, section, around, id).some((due) => hasRow(state, due))

/** True where a node's end lies beyond the section in which something missing is given: then all is given. */
export const endsDetour = ({ tree }: Ground, { detour }: State, name: string | null): boolean =>
  detour !== null &&
  detour.section !== null &&
  (name === null || spotOf(tree, detour.section).around.some((section) => section.name === name))

/** While something missing is given, nothing beyond its section is due. */
function withinDetour(ground: Ground, state: State, reach: Reach): Reach {
  return endsDetour(ground, state, reach.section)
    ? { section: state.detour?.section ?? null, laterPasses: true }
    : reach
}

/** All steps due after a node, up to where `reach` ends. The node itself is left out. */
export function dueAfter(ground: Ground, state: State, name: string, whole: Reach): Due[] {
  const reach = withinDetour(ground, state, whole)
  const due: Due[] = []
  let spot = spotOf(ground.tree, name)
  for (;;) {
    const place = placeAround(ground.tree, spot.node.name, state.place)
    for (const node of spot.siblings.slice(spot.index + 1)) due.push(...within(ground, state, node, place))
    const { parent } = spot
    if (parent === null) return due
    const last = parent.name === reach.section
    if (!last || reach.laterPasses) due.push(...laterPasses(ground, state, parent))
    if (last) return due
    spot = spotOf(ground.tree, parent.name)
  }
}

function laterPasses(ground: Ground, state: State, section: Section): Due[] {
  const { chart } = sectionKind(section)
  if (chart === null) return []
  const moment = sectionMoment(ground, state, section, state.place)
  return chart
    .due(moment)
    .map((pass, index) => ({ pass, turn: moment.turn + index + 1 }))
    .filter(({ pass }) => state.detour === null || !isGiven(ground, state, section, moment.around, pass))
    .flatMap(({ pass, turn }) => [
      ...withinPass(ground, state, section, {
        place: moment.around,
        pass,
        turn,
        outcome: closedAs(state, section, pass),
      }),
    ])
}
