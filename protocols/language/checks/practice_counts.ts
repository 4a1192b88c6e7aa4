import type { Check } from '../check.ts'
import { stepsOf } from '../structure.ts'

/**
 * What it does: A practice trial doesn't say what an outcome counts as.
 *
 * Why it matters: It never enters a score, so the value is never used.
 *
 * Example:
 *     - { timed: try_out, practice: true, counts-as: { limit: 60 s }, … }
 *
 * Instead:
 *     - { timed: try_out, practice: true, … }
 */
export default {
  code: 'practice_counts',
  severity: 'warning',
  needs: [],
  *run({ draft }) {
    for (const { node } of stepsOf(draft)) {
      if (!node.practice || Object.keys(node.countsAs).length === 0) continue
      yield {
        at: draft.at(node, 'counts-as'),
        message: `"${node.name}" is a practice trial, which enters no score.`,
        mend: 'Take counts-as away.',
      }
    }
  },
} satisfies Check
