/** The ways that lead on from a node: to what comes after it, or back to where a repeated practice was called. */
import type { Node, Step } from '../language/model.ts'
import { isSheet } from '../language/sheet.ts'
import { type Ground, isTrial } from './due.ts'
import type { State } from './state.ts'
import { stepKind } from './step-ground.ts'
import type { Way } from './transitions.ts'
import { afterNode, spotOf, stateOf, type Tree } from './tree.ts'

/** The steps within a node, itself included. */
function stepsIn(node: Node): readonly Step[] {
  if (node.node === 'step') return [node]
  return node.node === 'section' ? node.steps.flatMap(stepsIn) : []
}

/** The steps within a node that can call a practice again: none on a page, where nothing is at hand. */
function callersIn(node: Node): readonly Step[] {
  if (node.node !== 'section') return stepsIn(node)
  return isSheet(node) ? [] : node.steps.flatMap(callersIn)
}

const back: Way['change'] = ({ returning }: State) => {
  if (returning === null) return {}
  const { visit, flight } = returning
  return { at: visit.step, place: visit.place, visit, flight, running: false, returning: null }
}

const isCalledBy = (step: Step) => (state: State) => state.returning?.visit.step === step.name

/** Back into the caller: to the value that waits to be kept where there is one, else to its beginning. */
function waysBack(step: Step): Way[] {
  const held = Object.entries(stepKind(step).chart.states).filter(([, { flight }]) => flight === 'held')
  return [
    ...held.map(
      ([name]): Way => ({
        when: ({ returning }) =>
          returning !== null &&
          returning.visit.step === step.name &&
          returning.flight !== null &&
          returning.visit.state === name,
        target: stateOf(step.name, name),
        change: back,
      }),
    ),
    { when: isCalledBy(step), target: step.name, change: back },
  ]
}

/**
 * Where a repeated practice goes on to from `from` when it was called at `caller`: steps that are no trial are
 * done again on the way, trials that were given are passed over.
 */
function onTheWayBack(tree: Tree, from: string, caller: string): string {
  const { siblings, index } = spotOf(tree, from)
  for (const node of siblings.slice(index + 1)) {
    const steps = stepsIn(node)
    if (steps.some(({ name }) => name === caller)) return caller
    if (!steps.some(isTrial)) return node.name
  }
  return caller
}

/** All ways on from a node; the last one is the ordinary way. */
export function waysAfter({ tree }: Pick<Ground, 'tree'>, name: string): Way[] {
  const { siblings, index } = spotOf(tree, name)
  const callers = siblings.slice(index + 1).flatMap(callersIn)
  return [
    ...callers.flatMap((caller): Way[] => {
      const target = onTheWayBack(tree, name, caller.name)
      return target === caller.name ? waysBack(caller) : [{ when: isCalledBy(caller), target, change: null }]
    }),
    { when: null, target: afterNode(tree, name), change: null },
  ]
}

/** The practice that was last before a step; null where there was none in its place. */
export function practiceBefore(tree: Tree, name: string): Step | null {
  let spot = spotOf(tree, name)
  for (;;) {
    const before = spot.siblings.slice(0, spot.index).flatMap((node) => (node.node === 'step' ? [node] : []))
    const practice = before.findLast((step) => step.practice)
    if (practice !== undefined) return practice
    if (spot.parent === null) return null
    spot = spotOf(tree, spot.parent.name)
  }
}
