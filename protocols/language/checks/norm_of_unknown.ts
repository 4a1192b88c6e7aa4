import type { Check } from '../check.ts'
import { offer } from '../schema/suggest.ts'

/**
 * What it does: A norm is of a score that exists.
 *
 * Why it matters: The table would be compared with nothing.
 *
 * Example:
 *     norms: [{ norm: adults, of: tmie, … }]
 *
 * Instead:
 *     norms: [{ norm: adults, of: time, … }]
 */
export default {
  code: 'norm_of_unknown',
  severity: 'error',
  needs: ['scores'],
  *run({ draft, names }) {
    const scores = names.filter(({ of }) => of === 'score').map(({ name }) => name)
    for (const norm of draft.norms) {
      if (scores.includes(norm.of)) continue
      yield {
        at: draft.at(norm, 'of'),
        message: `There is no score "${norm.of}".`,
        mend: offer(norm.of, scores, 'scores'),
      }
    }
  },
} satisfies Check
