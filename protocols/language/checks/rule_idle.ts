import type { Check } from '../check.ts'
import { rulesOf } from '../structure.ts'

/**
 * What it does: A rule ends something, asks or notes something.
 *
 * Why it matters: A rule without any of them is judged and changes nothing.
 *
 * Example:
 *     - { rule: slow, when: "last(run.time) > 60" }
 *
 * Instead:
 *     - { rule: slow, when: "last(run.time) > 60", note: Slower than a minute. }
 */
export default {
  code: 'rule_idle',
  severity: 'warning',
  needs: [],
  *run({ draft }) {
    for (const { node } of rulesOf(draft)) {
      if (node.end !== null || node.note !== null || Object.keys(node.credit).length > 0) continue
      yield {
        at: draft.nameAt(node),
        message: `The rule "${node.name}" neither ends nor notes anything.`,
        mend: 'Add end or note, or take the rule away.',
      }
    }
  },
} satisfies Check
