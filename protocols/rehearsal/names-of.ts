import type { Protocol } from '../language/model.ts'
import { treeOf } from '../runner/tree.ts'

/** What a file names that a walk may show, in its order. */
export function namesOf(protocol: Protocol) {
  const { spots, steps } = treeOf(protocol)
  const nodes = [...spots.values()].map(({ node }) => node)
  return {
    steps: steps.map(({ name }) => name),
    rules: nodes.filter(({ node }) => node === 'rule').map(({ name }) => name),
    scores: protocol.scores.filter(({ value }) => value.type.is === 'number').map(({ name }) => name),
  }
}
