import type { Check } from '../check.ts'
import { tableFaults } from '../norms/faults.ts'
import type { Column } from '../norms/table.ts'

const FORMS: Readonly<Record<Column, string>> = {
  sex: 'F, M or any',
  age_min: 'whole years, or nothing',
  age_max: 'whole years, or nothing',
  hand: 'right, left, dominant, nondominant or any',
  n: 'a whole number from 1, or nothing',
  mean: 'a number with a point before decimals',
  sd: 'a number with a point before decimals, or nothing',
  provenance: 'seen or memory',
}

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
        mend: `Write ${FORMS[fault.column]}.`,
      }
    }
  },
} satisfies Check
