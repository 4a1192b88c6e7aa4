import type { Check } from '../check.ts'
import { tableFaults } from '../norms/faults.ts'
import { offer } from '../schema/suggest.ts'
import { COLUMNS } from '../norms/table.ts'

/**
 * What it does: A norm table has no other columns than sex, age_min, age_max, hand, n, mean, sd,
 * provenance.
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
      const mend = offer(fault.column, COLUMNS, 'columns')
      yield { at, message: `No column is named "${fault.column}".`, mend }
    }
  },
} satisfies Check
