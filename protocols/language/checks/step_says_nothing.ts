import type { Check } from '../check.ts'
import { isTrial, stepsOf } from '../structure.ts'

/**
 * What it does: A step that measures nothing shows words, a figure, or something of its own.
 *
 * Why it matters: The examiner would face an empty screen.
 *
 * Example:
 *     - { instruct: explain }
 *
 * Instead:
 *     - { instruct: explain, text: Take the pegs one at a time. }
 */
export default {
  code: 'step_says_nothing',
  severity: 'warning',
  needs: [],
  *run({ draft }) {
    for (const { node } of stepsOf(draft)) {
      if (isTrial(node) || node.text !== null || node.figure !== null || Object.keys(node.fields).length > 0)
        continue
      yield {
        at: draft.nameAt(node),
        message: `"${node.name}" shows nothing.`,
        mend: 'Add text, or a figure.',
      }
    }
  },
} satisfies Check
