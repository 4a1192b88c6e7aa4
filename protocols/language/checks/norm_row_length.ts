import type { Check } from '../check.ts'
import { tableFaults } from '../norms/faults.ts'

/**
 * What it does: Each row of a norm table has as many cells as the header.
 *
 * Why it matters: A cell too few moves all that follow into the wrong columns: a mean would be read as a
 * number of people.
 *
 * Example:
 *     F,20,29,right,16.1,1.9,seen
 *
 * Instead:
 *     F,20,29,right,,16.1,1.9,seen
 */
export default {
  code: 'norm_row_length',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { at, fault } of tableFaults(draft, 'norm_row_length')) {
      yield {
        at,
        message: `The row has ${fault.cells} cells, the header ${fault.columns}.`,
        mend: 'Leave a cell empty where nothing is known: two commas in a row.',
      }
    }
  },
} satisfies Check
