import type { Check } from '../check.ts'
import { childOf } from '../reader/tree.ts'

/**
 * What it does: A wording file is for the protocol in whose folder it lies.
 *
 * Why it matters: The words of another test would be read to the client.
 *
 * Example:
 *     ring_board/words/de.yaml:  for: peg_board
 *
 * Instead:
 *     ring_board/words/de.yaml:  for: ring_board
 */
export default {
  code: 'wording_for_other',
  severity: 'error',
  needs: [],
  *run({ draft, wordings }) {
    const id = childOf(draft.tree, 'id')
    for (const { tree } of wordings) {
      const other = childOf(tree, 'for')
      if (other?.is !== 'scalar' || id?.is !== 'scalar' || other.written === id.written) continue
      yield {
        at: other.at,
        message: `These words are for "${other.written}", the protocol here is "${id.written}".`,
        mend: `Write for: ${id.written}, or move the file to its protocol.`,
      }
    }
  },
} satisfies Check
