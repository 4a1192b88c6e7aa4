/** The steps of a draft in the order of the file, each with the sections around it. */
import { SECTION_KINDS, STEP_KINDS } from './schema/kinds.ts'
import type { Draft } from './convert/draft.ts'
import type { Node, Rule, Section, Step } from './model.ts'

export interface Placed<Kind extends Node = Node> {
  readonly node: Kind
  /** Outermost first. */
  readonly around: readonly Section[]
  /** Place in the order of the file. */
  readonly order: number
}

/** Every step, section and rule. */
export function nodesOf(draft: Draft): readonly Placed[] {
  const found: Placed[] = []
  const walk = (nodes: readonly Node[], around: readonly Section[]): void => {
    for (const node of nodes) {
      found.push({ node, around, order: found.length })
      if (node.node === 'section') walk(node.steps, [...around, node])
    }
  }
  walk(draft.steps, [])
  return found
}

const isOf =
  <Kind extends Node>(kind: Kind['node']) =>
  (placed: Placed): placed is Placed<Kind> =>
    placed.node.node === kind

export const stepsOf = (draft: Draft): readonly Placed<Step>[] => nodesOf(draft).filter(isOf<Step>('step'))
export const sectionsOf = (draft: Draft): readonly Placed<Section>[] =>
  nodesOf(draft).filter(isOf<Section>('section'))
export const rulesOf = (draft: Draft): readonly Placed<Rule>[] => nodesOf(draft).filter(isOf<Rule>('rule'))

/** Whether a step is an attempt at something that is measured. */
export function isTrial(step: Step): boolean {
  return Object.keys(STEP_KINDS.get(step.kind)?.columns(step) ?? {}).length > 0
}

/** Whether a section has a row of its own once it was gone through, such as a ladder. */
export function hasTable(section: Section): boolean {
  return Boolean(SECTION_KINDS.get(section.kind)?.found)
}
