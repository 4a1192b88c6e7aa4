import type { Check } from '../check.ts'
import { tableFaults } from '../norms/faults.ts'

/**
 * What it does: Each cell of a norm table holds what its column needs: F, M or any; whole years; right,
 * left, dominant, nondominant or any; numbers with a point; seen or memory.
 *
 * Why it matters: A row whose sex or age can't be read matches nobody, or everybody.
 *
 * Example:
 *     female,20,29,right,30,"16,1",1.9,seen
 *
 * Instead:
 *     F,20,29,right,30,16.1,1.9,seen
 */
export default {
  code: 'norm_value_unreadable',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { at, fault } of tableFaults(draft, 'norm_value_unreadable')) {
      const what = fault.text === '' ? 'Nothing' : `"${fault.text}"`
      yield {
        at,
        message: `${what} can't stand under ${fault.column}.`,
        mend: `Write ${fault.form}.`,
      }
    }
  },
} satisfies Check
