import type { Check } from '../check.ts'
import { sectionsOf } from '../structure.ts'

/**
 * What it does: A ladder goes one way when a level was accepted and the other way when it failed: down when it looks
 * for the least accepted level, up when it looks for the greatest. Up is later in the list.
 *
 * Why it matters: Otherwise it moves away from what it looks for, or never turns.
 *
 * Example:
 *     - { ladder: smallest, finds: least-accepted, moves: { accepted: up, failed: down }, … }
 *
 * Instead:
 *     - { ladder: smallest, finds: least-accepted, moves: { accepted: down, failed: up }, … }
 */
export default {
  code: 'ladder_moves',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { node } of sectionsOf(draft)) {
      const { moves, finds } = node.fields
      if (typeof moves !== 'object' || moves === null || typeof finds !== 'string') continue
      const { accepted, failed } = moves as { readonly accepted?: unknown; readonly failed?: unknown }
      const [onward, back] = finds === 'least-accepted' ? ['down', 'up'] : ['up', 'down']
      if (accepted === onward && failed === back) continue
      yield {
        at: draft.at(node, 'moves'),
        message: `"${node.name}" looks for the ${finds.replace('-', ' ')} level and moves away from it.`,
        mend: `Write moves: { accepted: ${onward}, failed: ${back} }.`,
      }
    }
  },
} satisfies Check
