import type { Check } from '../check.ts'
import { sectionsOf } from '../structure.ts'

/**
 * What it does: A section doesn't go through a list inside another that goes through the same list.
 *
 * Why it matters: Each hand would be tested within each hand; rows would name the list twice.
 *
 * Example:
 *     - for-each: hand
 *       in: hands
 *       steps: [{ for-each: other, in: hands, steps: [ … ] }]
 *
 * Instead:
 *     - for-each: hand
 *       in: hands
 *       steps: [ … ]
 */
export default {
  code: 'loop_in_itself',
  severity: 'warning',
  needs: [],
  *run({ draft }) {
    for (const { node, around } of sectionsOf(draft)) {
      const list = node.fields.in
      const outer = around.find((section) => typeof list === 'string' && section.fields.in === list)
      if (!outer) continue
      yield {
        at: draft.at(node, 'in'),
        message: `"${outer.name}" around it already goes through "${String(list)}".`,
        mend: 'Take one of the two sections away.',
      }
    }
  },
} satisfies Check
