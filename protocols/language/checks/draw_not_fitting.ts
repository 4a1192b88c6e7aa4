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
      const list = node.fields.in
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
