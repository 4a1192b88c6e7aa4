import type { Check } from '../check.ts'

/**
 * What it does: A score that is shown says whether higher or lower is better, or `none`.
 *
 * Why it matters: Without a direction the result can't say which hand did better, nor whether a change is
 * one for the better.
 *
 * Example:
 *     - { score: time, each: hand, value: first(run.time), unit: s }
 *
 * Instead:
 *     - { score: time, each: hand, value: first(run.time), unit: s, better: lower }
 */
export default {
  code: 'score_direction_missing',
  severity: 'warning',
  needs: [],
  *run({ draft }) {
    for (const score of draft.scores) {
      if (!score.shown || score.value.type.is !== 'number' || draft.node(score, 'better')) continue
      yield {
        at: draft.nameAt(score),
        message: `The score "${score.name}" does not say which way is better.`,
        mend: 'Add better: higher, better: lower or better: none.',
      }
    }
  },
} satisfies Check
