import type { Check } from '../check.ts'
import { rulesOf } from '../structure.ts'

/**
 * What it does: A rule's condition can be true.
 *
 * Why it matters: A rule that never holds is left over, or hides a stop that the test needs.
 *
 * Example:
 *     - { rule: stop, when: false, end: test }
 *
 * Instead:
 *     - { rule: stop, when: "last(run.time) > 60", end: test }
 */
export default {
  code: 'rule_never',
  severity: 'warning',
  needs: [],
  *run({ draft }) {
    for (const { node } of rulesOf(draft)) {
      if (node.when.source.trim() !== 'false') continue
      yield {
        at: draft.at(node, 'when'),
        message: `The rule "${node.name}" never holds.`,
        mend: 'Write its condition, or take the rule away.',
      }
    }
  },
} satisfies Check
