import type { Check } from '../check.ts'
import { tableFaults } from '../norms/faults.ts'

/**
 * What it does: A norm table is a CSV file that can be read to its end (RFC 4180).
 *
 * Why it matters: Rows after the place that can't be read would be missing in silence.
 *
 * Example:
 *     F,20,29,"right,30,16.1,1.9,seen
 *
 * Instead:
 *     F,20,29,right,30,16.1,1.9,seen
 */
export default {
  code: 'norm_table_syntax',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { at, fault } of tableFaults(draft, 'norm_table_syntax')) {
      yield {
        at,
        message: `The table can't be read from here: ${fault.message}.`,
        mend: 'Close the quotation mark, or take it away.',
      }
    }
  },
} satisfies Check
