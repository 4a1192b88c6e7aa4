import type { Check } from '../check.ts'
import { tablesOf } from '../norms/strata.ts'

/**
 * What it does: Each row of a table of means has a mean.
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
    const tables = tablesOf(draft).filter(({ norm }) => norm.as === 'mean-sd')
    for (const { row, at, cells } of tables.flatMap(({ rows }) => rows)) {
      if (row.mean !== null) continue
      yield {
        at: cells.mean ?? at,
        message: 'The row has no mean.',
        mend: 'Write the mean, or take the row away.',
      }
    }
  },
} satisfies Check
