import type { Check } from '../check.ts'
import { tableFaults } from '../norms/faults.ts'

/**
 * What it does: A norm table has each column once.
 *
 * Why it matters: Of two columns of one name nobody can tell which is meant.
 *
 * Example:
 *     sex,age_min,age_max,hand,n,mean,mean,sd,provenance
 *
 * Instead:
 *     sex,age_min,age_max,hand,n,mean,sd,provenance
 */
export default {
  code: 'norm_column_twice',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { at, fault } of tableFaults(draft, 'norm_column_twice')) {
      yield { at, message: `The column "${fault.column}" stands there twice.`, mend: 'Take one away.' }
    }
  },
} satisfies Check
