import type { Check } from '../check.ts'
import { rowsOf } from '../norms/strata.ts'
import { sectionsOf } from '../structure.ts'

/**
 * What it does: A table with rows by hand is of a score that is worked out for each hand.
 *
 * Why it matters: A score of both hands together has no side by which to choose the row.
 *
 * Example:
 *     scores: [{ score: total, value: … }] … F,20,29,right,30,16.1,1.9,seen
 *
 * Instead:
 *     scores: [{ score: total, each: hand, value: … }]
 */
export default {
  code: 'norm_hand_without_loop',
  severity: 'error',
  needs: ['steps', 'scores'],
  *run({ draft }) {
    const hands = new Set(
      sectionsOf(draft)
        .filter(({ node }) => node.fields.in === 'hands')
        .map(({ node }) => node.name),
    )
    for (const norm of draft.norms) {
      const score = draft.scores.find(({ name }) => name === norm.of)
      if (!score || score.each.some((name) => hands.has(name))) continue
      if (rowsOf(draft, norm).every(({ row }) => row.hand === 'any')) continue
      yield {
        at: draft.at(norm, 'of'),
        message: `The table has rows by hand, and "${score.name}" is not worked out for each hand.`,
        mend: 'Add each with the section over hands to the score, or write any under hand.',
      }
    }
  },
} satisfies Check
