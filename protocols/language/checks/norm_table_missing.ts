import type { Check } from '../check.ts'
import { tableFaults } from '../norms/faults.ts'

/**
 * What it does: The table of a norm lies in the folder `norms`.
 *
 * Why it matters: A norm without its table compares with nothing.
 *
 * Example:
 *     table: norms/adult.csv   # the file is norms/adults.csv
 *
 * Instead:
 *     table: norms/adults.csv
 */
export default {
  code: 'norm_table_missing',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { at, fault } of tableFaults(draft, 'norm_table_missing')) {
      yield {
        at,
        message: `There is no file ${fault.file}.`,
        mend: 'Put the table there, or write the name of the one that is.',
      }
    }
  },
} satisfies Check
