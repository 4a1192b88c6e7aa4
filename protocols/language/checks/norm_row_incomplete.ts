import type { Check } from '../check.ts'
import type { NormKind, NormRow } from '../model.ts'
import { tablesOf } from '../norms/strata.ts'

/** A mean that is missing has a check of its own. */
function isWhole({ percentiles, lms, cutOff, band }: NormRow, as: NormKind): boolean {
  if (as === 'mean-sd') return true
  if (as === 'percentiles') return percentiles.length > 1
  if (as === 'lms') return lms !== null
  return as === 'cut-offs' ? cutOff !== null : band !== null
}

const NEEDED: Readonly<Record<NormKind, string>> = {
  'mean-sd': 'a mean',
  percentiles: 'values at two ranks or more',
  lms: 'one of l, m and s',
  'cut-offs': 'a cut-off, or the bands on its sides',
  bands: 'a band',
}

/**
 * What it does: Each row of a norm table states all that its kind needs: two percentiles or more; L, M
 * and S; a cut-off with the bands on both sides; a band.
 *
 * Why it matters: A stratum without them can be found for a client and then says nothing.
 *
 * Example:
 *     l,m,s … -0.4,,0.11
 *
 * Instead:
 *     l,m,s … -0.4,24.1,0.11
 */
export default {
  code: 'norm_row_incomplete',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { norm, rows } of tablesOf(draft)) {
      for (const { row, at } of rows) {
        if (isWhole(row, norm.as)) continue
        yield {
          at,
          message: `The row lacks ${NEEDED[norm.as]}.`,
          mend: 'Fill in what is missing, or take the row away.',
        }
      }
    }
  },
} satisfies Check
