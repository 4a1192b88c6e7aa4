import type { Check } from '../check.ts'
import { bandsIn } from '../norms/bands.ts'

/**
 * What it does: Each band that a norm has words for is named by its table.
 *
 * Why it matters: A band that no row names is mostly a row that was forgotten, or a slip of the pen.
 *
 * Example:
 *     bands: { functional: Functional, severe: Severe }   # the table never says severe
 *
 * Instead:
 *     55,,severe
 */
export default {
  code: 'norm_band_unused',
  severity: 'warning',
  needs: ['norms'],
  *run({ draft }) {
    for (const norm of draft.norms) {
      const table = draft.normTable(norm)
      if (table.rows.length === 0) continue
      const named = new Set(table.rows.flatMap(({ row }) => bandsIn(row).map(([, id]) => id)))
      for (const id of Object.keys(norm.bands).filter((each) => !named.has(each))) {
        yield {
          at: draft.at(norm, 'bands', id),
          message: `No row of the table names the band "${id}".`,
          mend: 'Add the row, or take the band away.',
        }
      }
    }
  },
} satisfies Check
