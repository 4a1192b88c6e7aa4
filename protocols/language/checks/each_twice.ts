import type { Check } from '../check.ts'

/**
 * What it does: A score names each of its loops once.
 *
 * Why it matters: Twice the same loop is one, and the score would look as if it were worked out for more.
 *
 * Example:
 *     - { score: time, each: [hand, hand], … }
 *
 * Instead:
 *     - { score: time, each: hand, … }
 */
export default {
  code: 'each_twice',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const score of draft.scores) {
      for (const [index, name] of score.each.entries()) {
        if (score.each.indexOf(name) === index) continue
        yield {
          at: draft.at(score, 'each', index),
          message: `"${name}" stands here twice.`,
          mend: 'Take one away.',
        }
      }
    }
  },
} satisfies Check
