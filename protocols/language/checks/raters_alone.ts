import type { Check } from '../check.ts'
import { childOf } from '../reader/tree.ts'

/**
 * What it does: A single rater is named only where that one may rate another day (`later: true`).
 *
 * Why it matters: `raters` is for grades that several give, or that somebody gives later, such as from a recording. Who
 * gives the test and rates on the spot needs no list for it, and has nobody to be unseen by.
 *
 * Example:
 *     raters: { count: 1 }
 *
 * Instead:
 *     raters: { count: 1, later: true }
 */
export default {
  code: 'raters_alone',
  severity: 'error',
  needs: ['raters'],
  *run({ draft }) {
    const { raters } = draft
    if (raters === null || raters.count > 1 || (raters.later && !raters.unseen)) return
    yield {
      at: childOf(childOf(draft.tree, 'raters'), 'count')?.at ?? draft.tree.at,
      message: raters.later
        ? 'A single rater has nobody to be unseen by.'
        : 'A single rater who rates on the spot is no list of raters.',
      mend: raters.later
        ? 'Take unseen away, or let several rate.'
        : 'Take raters and the section over it away, or let that one rate another day: later: true.',
    }
  },
} satisfies Check
