/** The part of the chart that is a section without passes: all of its steps, or one of its cases. */
import type { Section } from '../language/model.ts'
import type { Choice } from './chart-parts.ts'
import { type Ground, placeAround, sectionKind, sectionMoment } from './due.ts'
import { grow } from './grown.ts'
import type { State } from './state.ts'
import { atOnce, type Change, type ChartNode, entering } from './transitions.ts'
import { stateOf } from './tree.ts'
import { waysAfter } from './ways.ts'

/** Beside states that are called as the file calls its steps: no name has a colon. */
const CHOOSING = ':choosing'

export function onceNode(
  ground: Ground,
  section: Section,
  nodes: Readonly<Record<string, ChartNode>>,
): ChartNode {
  const { chooses } = sectionKind(section)
  const [first] = section.steps
  const here = (state: State): Partial<State> => ({
    at: section.name,
    place: placeAround(ground.tree, section.name, state.place),
  })
  if (chooses === null) {
    return { id: section.name, initial: entering(first?.name ?? '', here), states: { ...nodes } }
  }
  const judges: Change = (state) => {
    const choice = chooses(sectionMoment(ground, state, section, state.place))
    return { ...here(state), ...chosen(section, state, choice) }
  }
  const parts = section.steps.map(({ name }) => atOnce(name, ({ next }) => next === name, null))
  const ways = waysAfter(ground, section.name).map(({ target, when, change }) => atOnce(target, when, change))
  return {
    id: section.name,
    initial: entering(CHOOSING, judges),
    states: { [CHOOSING]: { id: stateOf(section.name, CHOOSING), always: [...parts, ...ways] }, ...nodes },
  }
}

/** What was chosen is remembered for corrections; that nothing could be chosen is said. */
function chosen(section: Section, state: State, { part, unclear }: Choice): Partial<State> {
  const { place, trials } = state
  const judged = { rule: section.name, place, verdict: part, trials: trials.length }
  const nothing = { rule: section.name, place, did: 'nothing' as const }
  return {
    next: part,
    judged: grow(state.judged, judged),
    rules: unclear ? grow(state.rules, nothing) : state.rules,
  }
}
