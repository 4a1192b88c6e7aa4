import type { Check } from '../check.ts'
import { overlap, tablesOf } from '../norms/strata.ts'

/**
 * What it does: No client falls into two strata of one norm: strata of the same sex and hand don't share
 * an age.
 *
 * Why it matters: Two rows for one client would give two answers, and the program may not choose.
 *
 * Example:
 *     F,20,29,right,30,16.1,1.9,seen
 *     F,29,39,right,30,16.7,2.0,seen
 *
 * Instead:
 *     F,20,29,right,30,16.1,1.9,seen
 *     F,30,39,right,30,16.7,2.0,seen
 */
export default {
  code: 'norm_strata_overlap',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    // Bands share a stratum by their nature; norm_bands_overlap looks at theirs.
    for (const { rows } of tablesOf(draft).filter(({ norm }) => norm.as !== 'bands')) {
      for (const [index, { row, at }] of rows.entries()) {
        const other = rows.slice(0, index).find((earlier) => overlap(earlier.row, row))
        if (!other) continue
        yield {
          at,
          message: `This stratum and the one in line ${other.row.line} have clients in common.`,
          mend: 'Let each age, sex and hand stand in one row only.',
        }
      }
    }
  },
} satisfies Check
