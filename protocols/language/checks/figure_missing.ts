import type { Check } from '../check.ts'
import { offer } from '../schema/suggest.ts'
import { stepsOf } from '../structure.ts'
import { figuresOf } from '../convert/protocol.ts'

/**
 * What it does: A figure that a step shows lies in the folder `figures`.
 *
 * Why it matters: The examiner would see an empty frame in front of the client.
 *
 * Example:
 *     - { position: seated, figure: seated_at_tabel }
 *
 * Instead:
 *     - { position: seated, figure: seated_at_table }   # figures/seated_at_table.svg
 */
export default {
  code: 'figure_missing',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    const known = Object.keys(figuresOf(draft))
    for (const { node } of stepsOf(draft)) {
      if (node.figure === null || known.includes(node.figure)) continue
      yield {
        at: draft.at(node, 'figure'),
        message: `There is no file figures/${node.figure}.svg.`,
        mend:
          known.length === 0
            ? 'Put the drawing there, or take figure away.'
            : offer(node.figure, known, 'figures'),
      }
    }
  },
} satisfies Check
