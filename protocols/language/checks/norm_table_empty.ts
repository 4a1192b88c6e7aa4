import type { Check } from '../check.ts'
import { tableFaults } from '../norms/faults.ts'

/**
 * What it does: A norm table has at least one row under its header.
 *
 * Why it matters: An empty table compares with nothing.
 *
 * Example:
 *     sex,age_min,age_max,hand,n,mean,sd,provenance
 *
 * Instead:
 *     sex,age_min,age_max,hand,n,mean,sd,provenance
 *     F,20,29,right,30,16.1,1.9,seen
 */
export default {
  code: 'norm_table_empty',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { at } of tableFaults(draft, 'norm_table_empty')) {
      yield { at, message: 'The table has no rows.', mend: 'Add one row for each stratum.' }
    }
  },
} satisfies Check
