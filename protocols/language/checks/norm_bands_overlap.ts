import type { Check } from '../check.ts'
import { bandsMeet } from '../norms/bands.ts'
import { overlap, rowsOf } from '../norms/strata.ts'

/**
 * What it does: No value lies in two bands of one stratum: a band holds the value that it begins from
 * and not the one that it ends below.
 *
 * Why it matters: The program may not choose which of two bands a value belongs to.
 *
 * Example:
 *     from,below,band … 16,34,moderate … 33,56,severe
 *
 * Instead:
 *     from,below,band … 16,34,moderate … 34,56,severe
 */
export default {
  code: 'norm_bands_overlap',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    const rows = rowsOf(draft).filter(({ row }) => row.band !== null)
    for (const [index, { row, at }] of rows.entries()) {
      const other = rows
        .slice(0, index)
        .find(
          (earlier) =>
            earlier.at.file === at.file && overlap(earlier.row, row) && bandsMeet(earlier.row, row),
        )
      if (!other) continue
      yield {
        at,
        message: `This band and the one in line ${other.row.line} have values in common.`,
        mend: 'Let the one begin from the value that the other ends below.',
      }
    }
  },
} satisfies Check
