import type { Check } from '../check.ts'
import { rowsOf } from '../norms/strata.ts'

/**
 * What it does: A standard deviation is above zero.
 *
 * Why it matters: Without spread every value but the mean would lie infinitely far away.
 *
 * Example:
 *     F,20,29,right,30,16.1,0,seen
 *
 * Instead:
 *     F,20,29,right,30,16.1,1.9,seen
 */
export default {
  code: 'norm_sd_not_positive',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { row, at, cells } of rowsOf(draft)) {
      if (row.sd === null || row.sd > 0) continue
      yield {
        at: cells.sd ?? at,
        message: 'The standard deviation is 0.',
        mend: 'Write it as printed, or leave the cell empty.',
      }
    }
  },
} satisfies Check
