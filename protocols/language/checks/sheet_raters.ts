import type { Check } from '../check.ts'
import { passesOf } from '../passes.ts'
import { isSheet } from '../sheet.ts'
import { sectionsOf } from '../structure.ts'

/**
 * What it does: Raters who don’t see each other’s grades have no sheet in common.
 *
 * Why it matters: A page shows all that was given on it, so each would see what the other has given.
 *
 * Example:
 *     - { group: page, sheet: true, steps: [{ for-each: rater, in: raters, … }] }
 *
 * Instead:
 *     - { for-each: rater, in: raters, steps: [{ group: page, sheet: true, … }] }
 */
export default {
  code: 'sheet_raters',
  severity: 'error',
  needs: ['raters'],
  *run({ draft }) {
    if (draft.raters?.unseen !== true) return
    for (const { node, around } of sectionsOf(draft)) {
      const isShared = isSheet(node) || around.some(isSheet)
      if (!isShared || passesOf(node, draft.draws)?.list !== 'raters') continue
      yield {
        at: draft.nameAt(node),
        message: `The raters of "${node.name}" would see each other’s grades on one sheet.`,
        mend: 'Put the sheet into the section over the raters, so that each has one.',
      }
    }
  },
} satisfies Check
