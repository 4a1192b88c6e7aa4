import type { Check } from '../check.ts'
import { rowsOf } from '../norms/strata.ts'

/**
 * What it does: A stratum's lowest age is not above its highest.
 *
 * Why it matters: The row would match nobody.
 *
 * Example:
 *     F,29,20,right,30,16.1,1.9,seen
 *
 * Instead:
 *     F,20,29,right,30,16.1,1.9,seen
 */
export default {
  code: 'norm_ages_reversed',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { row, at, cells } of rowsOf(draft)) {
      if (row.ageMin === null || row.ageMax === null || row.ageMin <= row.ageMax) continue
      yield {
        at: cells.age_min ?? at,
        message: `The stratum begins at ${row.ageMin} and ends at ${row.ageMax}.`,
        mend: 'Write the lower age first.',
      }
    }
  },
} satisfies Check
