/** Where every node of a protocol stands: what is around it and what comes after it. */
import type { Node, Protocol, Section, Step } from '../language/model.ts'

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
}

/** Ids of states of the chart that are no node of the file. No name has a colon. */
export const END = ':end'
export const turnOf = (section: string): string => `${section}:turn`
export const stateOf = (node: string, state: string): string => `${node}:${state}`

export function treeOf(protocol: Protocol): Tree {
  const spots = new Map<string, Spot>()
  const steps: Step[] = []
  const visit = (siblings: readonly Node[], around: readonly Section[]): void => {
    for (const [index, node] of siblings.entries()) {
      spots.set(node.name, { node, parent: around.at(-1) ?? null, siblings, index, around })
      if (node.node === 'step') steps.push(node)
      if (node.node === 'section') visit(node.steps, [...around, node])
    }
  }
  visit(protocol.steps, [])
  return { spots, steps }
}

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

/** Id of the state that follows a node: the next one beside it, its section's next turn, or the end. */
export function afterNode(tree: Tree, name: string): string {
  const { siblings, index, parent } = spotOf(tree, name)
  return siblings[index + 1]?.name ?? (parent === null ? END : turnOf(parent.name))
}
