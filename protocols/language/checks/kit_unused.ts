import type { Check } from '../check.ts'
import { stepsOf } from '../structure.ts'

/**
 * What it does: Each piece of the kit is checked by some kit step.
 *
 * Why it matters: A piece that nobody is asked to look at is missed when the client already sits there.
 *
 * Example:
 *     kit: { board: { text: Board }, cup: { text: Cup } } … - { kit: ready, of: [board] }
 *
 * Instead:
 *     - { kit: ready, of: [board, cup] }
 */
export default {
  code: 'kit_unused',
  severity: 'advice',
  needs: ['kit', 'steps'],
  *run({ draft, names }) {
    const used = new Set(
      stepsOf(draft).flatMap(({ node }) => (Array.isArray(node.fields.of) ? node.fields.of : [])),
    )
    const pieces = names.filter(({ of }) => of === 'kit')
    // A name that no piece has is told by itself; which piece it stands for can't be known.
    if ([...used].some((piece) => !pieces.some(({ name }) => name === piece))) return
    for (const { name, at } of pieces) {
      if (used.has(name)) continue
      yield {
        at,
        message: `No step checks the piece "${name}".`,
        mend: `Name it in a kit step: of: [${name}].`,
      }
    }
  },
} satisfies Check
