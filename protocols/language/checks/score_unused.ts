import type { Check } from '../check.ts'
import { namesRead } from '../convert/link.ts'

/**
 * What it does: A score that isn't shown is read by another score, a rule, a norm or a change figure.
 *
 * Why it matters: One that nobody sees or reads is left over, or `shown: false` is a slip.
 *
 * Example:
 *     - { score: steady, value: count(run.time) > 2, shown: false }   # read nowhere
 *
 * Instead:
 *     - { repeat: runs, times: { least: 3, most: 9 }, until: steady, steps: [ … ] }
 */
export default {
  code: 'score_unused',
  severity: 'advice',
  needs: ['scores', 'steps'],
  *run({ draft }) {
    const used = new Set([...draft.norms.map(({ of }) => of), ...draft.change.map(({ of }) => of)])
    for (const placed of draft.expressions) {
      const own = draft.scores.find(({ value, needs }) => value === placed.hole || needs === placed.hole)
      for (const name of namesRead(placed)) if (name !== own?.name) used.add(name)
    }
    for (const score of draft.scores) {
      if (score.shown || used.has(score.name)) continue
      yield {
        at: draft.nameAt(score),
        message: `The score "${score.name}" is neither shown nor read by anything.`,
        mend: 'Take shown: false away, or the score.',
      }
    }
  },
} satisfies Check
