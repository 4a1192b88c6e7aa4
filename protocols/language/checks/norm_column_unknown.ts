import type { Check } from '../check.ts'
import { tableFaults } from '../norms/faults.ts'
import { offer } from '../schema/suggest.ts'

/**
 * What it does: A norm table has no other columns than those of its kind (sex, age_min, age_max, hand, n,
 * provenance, and mean, sd or what else its rows state), and those named as a loop, a condition, a step or a
 * property of the client (schooling, affected_side, arm), which choose the row.
 *
 * Why it matters: A column that isn't read may hold what should have chosen the row, such as an age under
 * another name.
 *
 * Example:
 *     sex,age_from,age_to,hand,n,mean,sd,provenance
 *
 * Instead:
 *     sex,age_min,age_max,hand,n,mean,sd,provenance
 */
export default {
  code: 'norm_column_unknown',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { at, fault } of tableFaults(draft, 'norm_column_unknown')) {
      const mend = offer(fault.column, fault.known, 'columns')
      yield { at, message: `No column is named "${fault.column}".`, mend }
    }
  },
} satisfies Check
