import type { Check } from '../check.ts'
import { namesOf } from '../convert/names.ts'
import { offer } from '../schema/suggest.ts'

/**
 * What it does: A score is worked out for each of loops that exist: sections around its trials.
 *
 * Why it matters: A score for each of something that isn't gone through has no place to be worked out at.
 *
 * Example:
 *     scores: [{ score: time, each: hnad, … }]
 *
 * Instead:
 *     scores: [{ score: time, each: hand, … }]
 */
export default {
  code: 'each_unknown',
  severity: 'error',
  needs: [],
  *run({ draft, names }) {
    const declared = [...namesOf(names, 'section'), ...namesOf(names, 'loop')]
    for (const score of draft.scores) {
      const list = draft.node(score, 'each')?.is === 'list'
      for (const [index, name] of score.each.entries()) {
        if (declared.includes(name)) continue
        yield {
          at: list ? draft.at(score, 'each', index) : draft.at(score, 'each'),
          message: `There is no loop "${name}".`,
          mend: offer(name, declared, 'loops'),
        }
      }
    }
  },
} satisfies Check
