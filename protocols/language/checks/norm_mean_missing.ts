import type { Check } from '../check.ts'
import { rowsOf } from '../norms/strata.ts'

/**
 * What it does: Each row of a norm table has a mean.
 *
 * Why it matters: A stratum without one can be found for a client and then says nothing.
 *
 * Example:
 *     F,20,29,right,30,,1.9,seen
 *
 * Instead:
 *     F,20,29,right,30,16.1,1.9,seen
 */
export default {
  code: 'norm_mean_missing',
  severity: 'warning',
  needs: [],
  *run({ draft }) {
    for (const { row, at, cells } of rowsOf(draft)) {
      if (row.mean !== null) continue
      yield {
        at: cells.mean ?? at,
        message: 'The row has no mean.',
        mend: 'Write the mean, or take the row away.',
      }
    }
  },
} satisfies Check
