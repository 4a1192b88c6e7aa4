import type { Check } from '../check.ts'

/**
 * What it does: A score is one number, or a yes or no.
 *
 * Why it matters: A list, a map or a text can't be compared, rounded or followed over time.
 *
 * Example:
 *     - { score: times, each: hand, value: run.time }
 *
 * Instead:
 *     - { score: time, each: hand, value: first(run.time), unit: s }
 */
export default {
  code: 'score_not_a_value',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const score of draft.scores) {
      const { type, reads } = score.value
      if (type.is === 'number' || type.is === 'bool' || (type.is === 'null' && reads.length === 0)) continue
      yield {
        at: draft.at(score, 'value'),
        message: `This gives ${type.is === 'text' ? 'a text' : `a ${type.is}`}; a score is one number, or a yes or no.`,
        mend: 'Take one value, such as first(…), min(…) or mean(…).',
      }
    }
  },
} satisfies Check
