import type { Check } from '../check.ts'
import { childOf } from '../reader/tree.ts'
import { NAME } from '../schema/shapes.ts'

/**
 * What it does: The protocol's id equals the name of its folder.
 *
 * Why it matters: Clinics find, compare and replace protocols by folder; a copy that kept its old id would
 * pass for the original.
 *
 * Example:
 *     my_board/protocol.yaml:  id: ring_board
 *
 * Instead:
 *     my_board/protocol.yaml:  id: my_board
 */
export default {
  code: 'id_not_folder',
  severity: 'warning',
  needs: [],
  *run({ draft }) {
    const folder =
      draft.folder.label
        .replace(/[\\/]+$/, '')
        .split(/[\\/]/)
        .at(-1) ?? ''
    const id = childOf(draft.tree, 'id')
    if (!NAME.test(folder) || id?.is !== 'scalar' || id.written === folder || draft.isBroken(id)) return
    yield {
      at: id.at,
      message: `The id is "${id.written}", the folder is named "${folder}".`,
      mend: 'Give both the same name.',
    }
  },
} satisfies Check
