import type { Check } from '../check.ts'
import { passesOf, turnKey } from '../passes.ts'
import { sectionsOf } from '../structure.ts'

/**
 * What it does: No section is named as the number of a pass is: a drawn list's loop or a ladder's level, and `_turn`.
 *
 * Why it matters: A place and a row hold that number under this name, beside the passes of the sections around.
 *
 * Example:
 *     - for-each: touch      # over a drawn list: its passes are numbered in touch_turn
 *       steps: [{ repeat: touch_turn, times: 2, steps: [ … ] }]
 *
 * Instead:
 *     - for-each: touch
 *       steps: [{ repeat: attempt, times: 2, steps: [ … ] }]
 */
export default {
  code: 'turn_clash',
  severity: 'error',
  needs: ['lists'],
  *run({ draft }) {
    const sections = sectionsOf(draft).flatMap(({ node }) => {
      const passes = passesOf(node, draft.draws)
      return passes === null ? [] : [{ node, passes }]
    })
    const taken = new Map(
      sections.flatMap(({ node, passes: { loop, numbered } }) =>
        numbered ? [[turnKey(loop), node.name] as const] : [],
      ),
    )
    for (const { node, passes } of sections) {
      const by = taken.get(passes.loop)
      if (by === undefined) continue
      yield {
        at: draft.nameAt(node),
        message: `The passes of "${by}" are numbered in "${passes.loop}".`,
        mend: 'Give this section another name.',
      }
    }
  },
} satisfies Check
