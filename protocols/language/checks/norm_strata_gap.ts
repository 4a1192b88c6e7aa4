import type { Check } from '../check.ts'
import { isTrue } from '../convert/values.ts'
import { gapsAmong, tablesOf } from '../norms/strata.ts'

/**
 * What it does: Between the youngest and the oldest stratum of a sex and hand no age is missing, nor a number
 * in another column that chooses the row, unless the norm admits it with `gaps: true`.
 *
 * Why it matters: A missing age is mostly a forgotten row; a client of that age has no comparison.
 *
 * Example:
 *     F,20,24,right,30,16.1,1.9,seen
 *     F,30,34,right,30,16.7,2.0,seen
 *
 * Instead:
 *     F,25,29,right,30,16.4,2.0,seen   # or, in the norm: gaps: true
 */
export default {
  code: 'norm_strata_gap',
  severity: 'warning',
  needs: [],
  *run({ draft }) {
    for (const { norm, rows } of tablesOf(draft)) {
      if (isTrue(draft.node(norm, 'gaps'))) continue
      for (const { of, after, from, until } of gapsAmong(rows)) {
        const [one, many] = of === 'age' ? ['Age', 'Ages'] : [`In ${of}`, `In ${of}`]
        const missing = from === until ? `${one} ${from} is` : `${many} ${from} to ${until} are`
        yield {
          at: after.at,
          message: `${missing} missing after this stratum.`,
          mend: 'Add the row, or write gaps: true in the norm where the source has none.',
        }
      }
    }
  },
} satisfies Check
