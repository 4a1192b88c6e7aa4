import type { Check } from '../check.ts'
import { tableFaults } from '../norms/faults.ts'

/**
 * What it does: A norm table has all of its columns: sex, age_min, age_max, hand, n, provenance, and what its
 * kind states: mean, sd; at least two percentiles such as p5, p95; l, m, s; cut, below, above, equal; from,
 * below, band. Tables of cut-offs and bands may leave out sex, ages, hand and n.
 *
 * Why it matters: Without one of them a row can't be matched with a client, or not be trusted.
 *
 * Example:
 *     sex,age_min,age_max,hand,n,mean,sd
 *
 * Instead:
 *     sex,age_min,age_max,hand,n,mean,sd,provenance
 */
export default {
  code: 'norm_column_missing',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { at, fault } of tableFaults(draft, 'norm_column_missing')) {
      yield {
        at,
        message: `The column "${fault.column}" is missing.`,
        mend: 'Add it to the header and to every row; cells that are not known stay empty.',
      }
    }
  },
} satisfies Check
