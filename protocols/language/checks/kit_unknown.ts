import type { Check } from '../check.ts'
import { offer } from '../schema/suggest.ts'
import { stepsOf } from '../structure.ts'

/**
 * What it does: A kit step names pieces that the protocol's `kit` has.
 *
 * Why it matters: The examiner can't check a piece that is described nowhere.
 *
 * Example:
 *     kit: { board: { text: Board } } … - { kit: ready, of: [bord] }
 *
 * Instead:
 *     - { kit: ready, of: [board] }
 */
export default {
  code: 'kit_unknown',
  severity: 'error',
  needs: ['kit'],
  *run({ draft, names }) {
    const known = names.filter(({ of }) => of === 'kit').map(({ name }) => name)
    for (const { node } of stepsOf(draft)) {
      if (!Array.isArray(node.fields.of)) continue
      for (const [index, piece] of node.fields.of.entries()) {
        if (known.includes(String(piece))) continue
        yield {
          at: draft.at(node, 'of', index),
          message: `The kit has no piece "${piece}".`,
          mend: offer(String(piece), known, 'kit'),
        }
      }
    }
  },
} satisfies Check
