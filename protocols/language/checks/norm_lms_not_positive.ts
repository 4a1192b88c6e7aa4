import type { Check } from '../check.ts'
import { rowsOf } from '../norms/strata.ts'

/**
 * What it does: In a table of L, M and S the median M and the coefficient of variation S are above
 * zero.
 *
 * Why it matters: The method takes the logarithm of the value over M and divides by S: at zero or below
 * it gives no number.
 *
 * Example:
 *     l,m,s … -0.4,0,0.11
 *
 * Instead:
 *     l,m,s … -0.4,24.1,0.11
 */
export default {
  code: 'norm_lms_not_positive',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { row, at, cells } of rowsOf(draft)) {
      for (const column of ['m', 's'] as const) {
        if (row.lms === null || row.lms[column] > 0) continue
        yield {
          at: cells[column] ?? at,
          message: `${column === 'm' ? 'The median M' : 'The variation S'} is not above zero.`,
          mend: 'Write it as printed, or take the row away.',
        }
      }
    }
  },
} satisfies Check
