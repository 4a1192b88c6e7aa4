import type { Check } from '../check.ts'

/**
 * What it does: The items of one list have different ids.
 *
 * Why it matters: A trial's row is told apart by the id of its item; two alike would be one.
 *
 * Example:
 *     lists: { tasks: [{ id: near }, { id: near }] }
 *
 * Instead:
 *     lists: { tasks: [{ id: near }, { id: far }] }
 */
export default {
  code: 'item_twice',
  severity: 'error',
  needs: ['lists'],
  *run({ draft }) {
    for (const [list, items] of Object.entries(draft.lists)) {
      const seen = new Set<string>()
      for (const item of items) {
        if (seen.has(item.id)) {
          yield {
            at: draft.at(item, 'id'),
            message: `The list "${list}" already has an item "${item.id}".`,
            mend: 'Give this one another id.',
          }
        }
        seen.add(item.id)
      }
    }
  },
} satisfies Check
