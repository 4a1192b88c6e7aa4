/** Where every node of a protocol stands: what is around it and what comes after it. */
import type { Node, Protocol, Section, Step } from '../language/model.ts'
import { keysOf, passesOf } from '../language/passes.ts'
import { SECTION_KINDS } from '../language/schema/kinds.ts'

export interface Spot {
  readonly node: Node
  readonly parent: Section | null
  readonly siblings: readonly Node[]
  readonly index: number
  /** Sections around it, outermost first. */
  readonly around: readonly Section[]
}

export interface Tree {
  readonly spots: ReadonlyMap<string, Spot>
  readonly steps: readonly Step[]
  /** Keys that the passes of a section have in a place, by its name. */
  readonly keys: ReadonlyMap<string, readonly string[]>
}

/** Ids of states of the chart that are no node of the file. No name has a colon. */
export const END = ':end'
export const turnOf = (section: string): string => `${section}:turn`
export const stateOf = (node: string, state: string): string => `${node}:${state}`

export function treeOf(protocol: Protocol): Tree {
  const spots = new Map<string, Spot>()
  const steps: Step[] = []
  const keys = new Map<string, readonly string[]>()
  const visit = (siblings: readonly Node[], around: readonly Section[]): void => {
    for (const [index, node] of siblings.entries()) {
      spots.set(node.name, { node, parent: around.at(-1) ?? null, siblings, index, around })
      if (node.node === 'step') steps.push(node)
      if (node.node !== 'section') continue
      keys.set(node.name, keysOf(passesOf(node, protocol.draws)))
      for (const list of listsIn(node)) visit(list, [...around, node])
    }
  }
  visit(protocol.steps, [])
  return { spots, steps, keys }
}

/** Steps that are given one after the other: all in the section, or each of its cases by itself. */
const listsIn = (section: Section): readonly (readonly Node[])[] =>
  SECTION_KINDS.get(section.kind)?.chooses === null ? [section.steps] : section.steps.map((part) => [part])

/** True for a section that is given pass after pass. */
const hasPasses = (section: Section): boolean => SECTION_KINDS.get(section.kind)?.chart !== null

/** A node by its name; that every name is known was checked when the protocol was read. */
export function spotOf(tree: Tree, name: string): Spot {
  const spot = tree.spots.get(name)
  if (spot === undefined) throw new Error(`The protocol has no node named ${name}.`)
  return spot
}

export function stepOf(tree: Tree, name: string): Step {
  const { node } = spotOf(tree, name)
  if (node.node !== 'step') throw new Error(`${name} is no step.`)
  return node
}

/** Id of the state that follows a node: the next one beside it, its section's next turn, what comes after a section without passes, or the end. */
export function afterNode(tree: Tree, name: string): string {
  const { siblings, index, parent } = spotOf(tree, name)
  const next = siblings[index + 1]
  if (next !== undefined || parent === null) return next?.name ?? END
  return hasPasses(parent) ? turnOf(parent.name) : afterNode(tree, parent.name)
}
