import type { Check } from '../check.ts'
import { sectionsOf } from '../structure.ts'

/**
 * What it does: `take` stands at a section over a drawn list, and such a section has no `order` or `where`.
 *
 * Why it matters: The draw is the order. A part of a list that isn't drawn is always the same part.
 *
 * Example:
 *     lists: { tasks: [{ id: low }, { id: high }] }
 *     - { for-each: task, in: tasks, take: 1, steps: [ … ] }
 *
 * Instead:
 *     lists: { pauses: { draw: { plain: 4, blank: 1 }, per: hand } }
 *     - { for-each: pause, in: pauses, take: 1, steps: [ … ] }
 */
export default {
  code: 'draw_not_fitting',
  severity: 'error',
  needs: ['lists'],
  *run({ draft }) {
    for (const { node } of sectionsOf(draft)) {
      const { in: list, over } = node.fields
      if (typeof over === 'string' && Object.hasOwn(draft.draws, over)) {
        yield {
          at: draft.at(node, 'over'),
          message: `"${over}" is drawn: its items are no levels in an order.`,
          mend: 'Name a list whose items go from one end to the other.',
        }
      }
      if (typeof list !== 'string') continue
      const isDrawn = Object.hasOwn(draft.draws, list)
      for (const key of isDrawn ? ['order', 'where'] : ['take']) {
        if (node.fields[key] === undefined) continue
        yield {
          at: draft.at(node, key),
          message: isDrawn ? `"${list}" is drawn: it has no other "${key}".` : `"${list}" is not drawn.`,
          mend: `Take "${key}" away.`,
        }
      }
    }
  },
} satisfies Check
