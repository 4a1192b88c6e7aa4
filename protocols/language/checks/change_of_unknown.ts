import type { Check } from '../check.ts'
import { offer } from '../schema/suggest.ts'

/**
 * What it does: A change figure is of a score that exists.
 *
 * Why it matters: The figure would judge nothing.
 *
 * Example:
 *     change: [{ of: tmie, mdc95: 3 s, … }]
 *
 * Instead:
 *     change: [{ of: time, mdc95: 3 s, … }]
 */
export default {
  code: 'change_of_unknown',
  severity: 'error',
  needs: ['scores'],
  *run({ draft, names }) {
    const scores = names.filter(({ of }) => of === 'score').map(({ name }) => name)
    for (const figure of draft.change) {
      if (scores.includes(figure.of)) continue
      yield {
        at: draft.at(figure, 'of'),
        message: `There is no score "${figure.of}".`,
        mend: offer(figure.of, scores, 'scores'),
      }
    }
  },
} satisfies Check
