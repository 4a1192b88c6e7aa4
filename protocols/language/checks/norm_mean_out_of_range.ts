import type { Check } from '../check.ts'
import { convert } from '../units.ts'
import { rowsOf } from '../norms/strata.ts'

/**
 * What it does: The means of a norm lie inside the range that its score can have.
 *
 * Why it matters: A mean outside of it is mostly a slip of a digit, or a table in another unit than
 * stated.
 *
 * Example:
 *     scores: [{ score: blocks, range: [0, 150], … }]   # and a mean of 752
 *
 * Instead:
 *     F,20,29,right,30,75.2,7.1,seen
 */
export default {
  code: 'norm_mean_out_of_range',
  severity: 'warning',
  needs: ['scores'],
  *run({ draft }) {
    for (const norm of draft.norms) {
      const score = draft.scores.find(({ name }) => name === norm.of)
      if (!score?.range) continue
      const [low, high] = score.range
      for (const { row, at, cells } of rowsOf(draft, norm)) {
        const mean = row.mean === null ? null : convert(row.mean, norm.unit, score.unit)
        if (mean === null || (mean >= low && mean <= high)) continue
        yield {
          at: cells.mean ?? at,
          message: `The mean ${row.mean} ${norm.unit} lies outside of what "${score.name}" can be: ${low} to ${high} ${score.unit}.`,
          mend: 'Compare the cell with the source, and the unit that the norm states.',
        }
      }
    }
  },
} satisfies Check
