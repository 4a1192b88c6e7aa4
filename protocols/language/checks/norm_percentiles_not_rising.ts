import type { Check } from '../check.ts'
import { rowsOf } from '../norms/strata.ts'

/**
 * What it does: In each row of a table of percentiles the values rise with their ranks, or stay the
 * same.
 *
 * Why it matters: Ranks count values from the lowest up, also where low is good: a table printed the
 * other way round, or a slip of the pen, would turn good into bad.
 *
 * Example:
 *     p5,p50,p95 … 30.0,24.0,18.0
 *
 * Instead:
 *     p5,p50,p95 … 18.0,24.0,30.0
 */
export default {
  code: 'norm_percentiles_not_rising',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { row, at, cells } of rowsOf(draft)) {
      for (const [index, { rank, value }] of row.percentiles.entries()) {
        const before = row.percentiles[index - 1]
        if (!before || before.value <= value) continue
        yield {
          at: cells[`p${rank}`] ?? at,
          message: `The value at rank ${rank} is below the one at rank ${before.rank}.`,
          mend: 'Compare the row with the source; ranks count from the lowest value up, also where low is good.',
        }
      }
    }
  },
} satisfies Check
