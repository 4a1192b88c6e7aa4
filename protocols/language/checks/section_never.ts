import type { Check } from '../check.ts'
import { SECTION_KINDS } from '../schema/kinds.ts'
import { sectionsOf } from '../structure.ts'

/**
 * What it does: A section's condition can be true.
 *
 * Why it matters: With `where: false` none of its steps is ever given.
 *
 * Example:
 *     - for-each: task
 *       in: tasks
 *       where: false
 *
 * Instead:
 *     - for-each: task
 *       in: tasks
 *       where: task.role == 'hardest'
 */
export default {
  code: 'section_never',
  severity: 'error',
  needs: ['steps'],
  *run({ draft }) {
    for (const placed of draft.expressions) {
      const section = sectionsOf(draft).find(({ node }) => draft.places.get(node) === placed.owner)?.node
      if (!section || placed.hole.source.trim() !== 'false') continue
      if (!SECTION_KINDS.get(section.kind)?.conditions.includes(placed.key)) continue
      yield {
        at: placed.node.at,
        message: `"${placed.key}" of "${section.name}" never holds.`,
        mend: 'Write its condition, or take the key away.',
      }
    }
  },
} satisfies Check
