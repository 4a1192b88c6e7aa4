import type { Check } from '../check.ts'
import { overlap, rowsOf } from '../norms/strata.ts'

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
    const told = new Set<string>()
    for (const norm of draft.norms) {
      if (told.has(norm.file)) continue
      told.add(norm.file)
      const rows = rowsOf(draft, norm)
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
