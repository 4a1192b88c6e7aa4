import type { Check } from '../check.ts'
import { isTrue } from '../convert/values.ts'
import { bandGaps } from '../norms/bands.ts'
import { tablesOf } from '../norms/strata.ts'

/**
 * What it does: Between the lowest and the highest band of a stratum no value is missing, unless the
 * norm admits it with gaps: true.
 *
 * Why it matters: Bands printed in whole units (16 to 25, 26 to 33) leave the values between them
 * without a band.
 *
 * Example:
 *     from,below,band … 16,25,functional … 26,34,moderate
 *
 * Instead:
 *     from,below,band … 16,26,functional … 26,34,moderate
 */
export default {
  code: 'norm_bands_gap',
  severity: 'warning',
  needs: [],
  *run({ draft }) {
    for (const { norm, rows } of tablesOf(draft)) {
      if (isTrue(draft.node(norm, 'gaps'))) continue
      for (const { after, from, below } of bandGaps(rows)) {
        yield {
          at: after.at,
          message: `Values from ${from} to below ${below} have no band.`,
          mend: 'Let the next band begin where this one ends, or write gaps: true in the norm.',
        }
      }
    }
  },
} satisfies Check
