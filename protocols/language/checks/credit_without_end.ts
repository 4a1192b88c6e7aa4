import type { Check } from '../check.ts'
import { rulesOf } from '../structure.ts'

/**
 * What it does: A rule that credits also ends something.
 *
 * Why it matters: Only what is cut off can be credited.
 *
 * Example:
 *     - { rule: full, when: "min(quality.value) == 3", credit: { quality: 3 } }
 *
 * Instead:
 *     - { rule: full, when: "min(quality.value) == 3", end: task, credit: { quality: 3 } }
 */
export default {
  code: 'credit_without_end',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { node } of rulesOf(draft)) {
      if (node.end !== null || Object.keys(node.credit).length === 0) continue
      yield {
        at: draft.at(node, 'credit'),
        message: 'The rule credits trials without ending anything.',
        mend: 'Add end with the section that it ends.',
      }
    }
  },
} satisfies Check
