import type { Check } from '../check.ts'
import { sectionsOf } from '../structure.ts'

/**
 * What it does: Orders that speak of sides or of the affected hand stand only at a section over `hands`.
 *
 * Why it matters: Items of another list have no side to be ordered by.
 *
 * Example:
 *     - for-each: task
 *       in: tasks
 *       order: dominant-first
 *
 * Instead:
 *     - for-each: task
 *       in: tasks
 *       order: shuffled
 */
export default {
  code: 'order_needs_hands',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { node } of sectionsOf(draft)) {
      const { order, in: list } = node.fields
      if (typeof list !== 'string' || list === 'hands') continue
      const orders: readonly unknown[] = Array.isArray(order) ? order : [order]
      for (const [index, each] of orders.entries()) {
        if (typeof each !== 'string' || !each.endsWith('-first')) continue
        yield {
          at: Array.isArray(order) ? draft.at(node, 'order', index) : draft.at(node, 'order'),
          message: `"${each}" orders hands, and "${list}" is a list of something else.`,
          mend: 'Write chosen, shuffled or balanced, or take the order away: then it is the order of the list.',
        }
      }
    }
  },
} satisfies Check
