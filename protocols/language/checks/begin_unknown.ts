import type { Check } from '../check.ts'
import { offer } from '../schema/suggest.ts'
import { sectionsOf } from '../structure.ts'

/**
 * What it does: A ladder begins at a level of its list.
 *
 * Why it matters: Without its first level the ladder has nothing to give.
 *
 * Example:
 *     - { ladder: smallest, over: gaps, level: spacing, begin: g55, … }
 *
 * Instead:
 *     - { ladder: smallest, over: gaps, level: spacing, begin: g5, … }
 */
export default {
  code: 'begin_unknown',
  severity: 'error',
  needs: ['lists'],
  *run({ draft }) {
    for (const { node } of sectionsOf(draft)) {
      const { begin, over } = node.fields
      const levels = typeof over === 'string' ? draft.lists[over]?.map(({ id }) => id) : undefined
      if (typeof begin !== 'string' || levels === undefined || levels.includes(begin)) continue
      yield {
        at: draft.at(node, 'begin'),
        message: `The list "${String(over)}" has no item "${begin}".`,
        mend: offer(begin, levels, 'items'),
      }
    }
  },
} satisfies Check
