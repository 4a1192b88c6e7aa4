import type { Check } from '../check.ts'

/**
 * What it does: A score that is shown has a title in words.
 *
 * Why it matters: Without one the result shows its name, which is written for formulas.
 *
 * Example:
 *     - { score: mean_of_3, value: … }
 *
 * Instead:
 *     - { score: mean_of_3, title: Mean of three, value: … }
 */
export default {
  code: 'score_title_missing',
  severity: 'advice',
  needs: [],
  *run({ draft }) {
    for (const score of draft.scores) {
      if (!score.shown || draft.node(score, 'title')) continue
      yield {
        at: draft.nameAt(score),
        message: `The score "${score.name}" has no title.`,
        mend: `Add one in words, such as title: ${score.name.charAt(0).toUpperCase()}${score.name.slice(1).replaceAll('_', ' ')}.`,
      }
    }
  },
} satisfies Check
