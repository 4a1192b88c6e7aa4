import type { Check } from '../check.ts'
import { isTrial, stepsOf } from '../structure.ts'

/**
 * What it does: A protocol with trials has at least one score.
 *
 * Why it matters: Without a score the trials are recorded and the result stays empty.
 *
 * Example:
 *     steps: [{ timed: run, … }]   # and no scores
 *
 * Instead:
 *     scores: [{ score: time, value: first(run.time), unit: s, better: lower }]
 */
export default {
  code: 'scores_missing',
  severity: 'warning',
  needs: ['scores', 'steps'],
  *run({ draft }) {
    const trial = stepsOf(draft).find(({ node }) => isTrial(node) && !node.practice)
    if (!trial || draft.scores.length > 0) return
    yield {
      at: draft.nameAt(trial.node),
      message: 'The protocol measures, and has no score.',
      mend: 'Add scores with a formula over the trials.',
    }
  },
} satisfies Check
