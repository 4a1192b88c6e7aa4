import type { Check } from '../check.ts'
import { isSheet } from '../sheet.ts'
import { sectionsOf } from '../structure.ts'

/**
 * What it does: A section over `hands` says which hand comes first.
 *
 * Why it matters: Without an order the program's own rule decides (less affected first, then the hand used
 * now, then right); the test's source usually has one.
 *
 * Example:
 *     - for-each: hand
 *       in: hands
 *
 * Instead:
 *     - for-each: hand
 *       in: hands
 *       order: [dominant-first]
 */
export default {
  code: 'order_missing',
  severity: 'advice',
  needs: [],
  *run({ draft }) {
    for (const { node, around } of sectionsOf(draft)) {
      if (node.fields.in !== 'hands' || node.fields.order !== undefined) continue
      // A page is filled in in any order: no hand comes first there.
      if ([...around, node].some(isSheet)) continue
      yield {
        at: draft.nameAt(node),
        message: `"${node.name}" does not say which hand comes first.`,
        mend: 'Add an order, such as order: [dominant-first].',
      }
    }
  },
} satisfies Check
