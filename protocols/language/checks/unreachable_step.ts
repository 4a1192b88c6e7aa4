import type { Check } from '../check.ts'
import type { Node } from '../model.ts'

interface Unreached {
  readonly node: Node
  readonly rule: string
}

/** Steps behind a rule that always ends something around them, once for each such rule. */
function unreached(nodes: readonly Node[]): readonly Unreached[] {
  const found: Unreached[] = []
  for (const [index, node] of nodes.entries()) {
    if (node.node === 'section') found.push(...unreached(node.steps))
    const next = nodes[index + 1]
    if (node.node !== 'rule' || node.end === null || node.when.source.trim() !== 'true' || !next) continue
    found.push({ node: next, rule: node.name })
    break
  }
  return found
}

/**
 * What it does: Every step can be reached: none stands behind a rule that always ends the section around
 * it.
 *
 * Why it matters: A step that is never given leaves its scores without a value for every client.
 *
 * Example:
 *     - { rule: done, when: true, end: hand }
 *     - { timed: run, … }
 *
 * Instead:
 *     - { timed: run, … }
 *     - { rule: done, when: "last(run.time) > 60", end: hand }
 */
export default {
  code: 'unreachable_step',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { node, rule } of unreached(draft.steps)) {
      yield {
        at: draft.nameAt(node),
        message: `"${node.name}" is never reached: the rule "${rule}" before it always ends what is around.`,
        mend: 'Give the rule a condition that can be false, or move it behind the steps.',
      }
    }
  },
} satisfies Check
