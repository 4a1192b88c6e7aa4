import type { Check } from '../check.ts'
import { tablesOf } from '../norms/strata.ts'
import { offer } from '../schema/suggest.ts'
import { bandsIn } from '../norms/bands.ts'

/**
 * What it does: Each band that a norm table names has its words in the norm’s key bands.
 *
 * Why it matters: The result says where a value lies in the protocol’s own words, in each of its
 * languages.
 *
 * Example:
 *     0,16,functional   # bands: { moderate: Moderate }
 *
 * Instead:
 *     bands: { functional: Functional, moderate: Moderate }
 */
export default {
  code: 'norm_band_unknown',
  severity: 'error',
  needs: ['norms'],
  *run({ draft }) {
    for (const { norm, rows } of tablesOf(draft)) {
      const known = Object.keys(norm.bands)
      for (const { row, at, cells } of rows) {
        for (const [column, id] of bandsIn(row)) {
          if (known.includes(id)) continue
          yield {
            at: cells[column] ?? at,
            message: `The norm "${norm.name}" has no words for the band "${id}".`,
            mend: offer(id, known, 'bands in this norm'),
          }
        }
      }
    }
  },
} satisfies Check
