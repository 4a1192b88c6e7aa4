import type { Check } from '../check.ts'
import { rowsOf } from '../norms/strata.ts'

/**
 * What it does: The figures of a norm were seen in print, not written down from memory.
 *
 * Why it matters: Figures from memory are shown apart and never enter the short text for the record until
 * a named person of the clinic has verified them.
 *
 * Example:
 *     F,20,29,right,30,16.1,1.9,memory
 *
 * Instead:
 *     F,20,29,right,30,16.1,1.9,seen   # after comparing with the source
 */
export default {
  code: 'norm_from_memory',
  severity: 'advice',
  needs: [],
  *run({ draft }) {
    for (const norm of draft.norms) {
      const rows = rowsOf(draft, norm)
      const recalled = rows.filter(({ row }) => row.provenance === 'memory').length
      if (recalled === 0) continue
      yield {
        at: draft.at(norm, 'table'),
        message: `${recalled} of ${rows.length} rows of this table are from memory.`,
        mend: 'Compare them with the source, and write seen in the rows that agree.',
      }
    }
  },
} satisfies Check
