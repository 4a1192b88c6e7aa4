import type { Check } from '../check.ts'
import { stepsOf } from '../structure.ts'

/**
 * What it does: What the outcome `limit` counts as is said only where a limit can be reached.
 *
 * Why it matters: Without a limit the outcome never comes, and the clock runs on.
 *
 * Example:
 *     - { timed: run, …, counts-as: { limit: 60 s } }
 *
 * Instead:
 *     - { timed: run, …, limit: 60 s, counts-as: { limit: 60 s } }
 */
export default {
  code: 'limit_without_value',
  severity: 'warning',
  needs: [],
  *run({ draft }) {
    for (const { node } of stepsOf(draft)) {
      if (!node.countsAs.limit || node.fields.limit !== undefined) continue
      yield {
        at: draft.at(node, 'counts-as'),
        message: `"${node.name}" says what the limit counts as, and has none.`,
        mend: 'Add limit with a time, or take it from counts-as.',
      }
    }
  },
} satisfies Check
