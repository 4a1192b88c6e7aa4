import type { Check } from '../check.ts'
import { sectionsOf } from '../structure.ts'

/**
 * What it does: A section repeated between fewest and most passes says with `until` when it is over.
 *
 * Why it matters: Without it only the examiner can tell, and two examiners give different tests.
 *
 * Example:
 *     - { repeat: run, times: { least: 5, most: 10 }, steps: [ … ] }
 *
 * Instead:
 *     - { repeat: run, times: { least: 5, most: 10 }, until: steady, steps: [ … ] }
 */
export default {
  code: 'repeat_until',
  severity: 'warning',
  needs: [],
  *run({ draft }) {
    for (const { node } of sectionsOf(draft)) {
      const times: unknown = node.fields.times
      const ranges = typeof times === 'object' && times !== null && 'least' in times
      if (!ranges || node.fields.until !== undefined) continue
      yield {
        at: draft.at(node, 'times'),
        message: `Nothing says when "${node.name}" is over between its fewest and its most passes.`,
        mend: 'Add until with a condition, or write one number.',
      }
    }
  },
} satisfies Check
