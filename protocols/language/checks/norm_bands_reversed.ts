import type { Check } from '../check.ts'
import { rowsOf } from '../norms/strata.ts'

/**
 * What it does: A band begins from a lower value than it ends below; one end may be open.
 *
 * Why it matters: A band the wrong way round holds no value at all.
 *
 * Example:
 *     from,below,band … 34,16,moderate
 *
 * Instead:
 *     from,below,band … 16,34,moderate
 */
export default {
  code: 'norm_bands_reversed',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { row, at, cells } of rowsOf(draft)) {
      if (row.band === null || row.band.from === null || row.band.below === null) continue
      if (row.band.from < row.band.below) continue
      yield {
        at: cells['from'] ?? at,
        message: `The band begins from ${row.band.from} and ends below ${row.band.below}.`,
        mend: 'Write the lower value under from; the upper one, which it does not hold, under below.',
      }
    }
  },
} satisfies Check
