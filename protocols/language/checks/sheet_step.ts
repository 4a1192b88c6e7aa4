import type { Check } from '../check.ts'
import { STEP_KINDS } from '../schema/kinds.ts'
import { isSheet } from '../sheet.ts'
import { stepsOf } from '../structure.ts'

/**
 * What it does: What stands on a sheet is given by one value that is typed: a measured step, a rated one without
 * `highest`, or a question. It is neither practice nor a further reading (`of`).
 *
 * Why it matters: A page is filled in by a run of values, in any order. What needs a clock, words to be said or a way
 * of its own needs a screen of its own too; and what hangs on another cell can't be given before it.
 *
 * Example:
 *     - { group: page, sheet: true, steps: [{ timed: run, start: { said: go } }] }
 *
 * Instead:
 *     - { group: page, sheet: true, steps: [{ measured: bend, unit: deg, range: [0, 160] }] }
 */
export default {
  code: 'sheet_step',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { node, around } of stepsOf(draft)) {
      if (!around.some(isSheet)) continue
      const isTyped = (STEP_KINDS.get(node.kind)?.onSheet?.(node) ?? null) !== null
      if (isTyped && !node.practice && node.of === null) continue
      const why = !isTyped
        ? 'isn’t given by one value that is typed'
        : node.practice
          ? 'is practice'
          : 'is a further reading of another trial'
      yield {
        at: draft.nameAt(node),
        message: `"${node.name}" can’t stand on a sheet, since it ${why}.`,
        mend:
          node.of === null
            ? 'Put it before or behind the sheet.'
            : 'Take of away: on a sheet it is a cell of its own.',
      }
    }
  },
} satisfies Check
