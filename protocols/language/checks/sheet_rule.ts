import type { Check } from '../check.ts'
import { isSheet } from '../sheet.ts'
import { rulesOf } from '../structure.ts'

/**
 * What it does: No rule stands on a sheet.
 *
 * Why it matters: A page is filled in in any order: where a rule stands between two cells means nothing there.
 *
 * Example:
 *     - { group: page, sheet: true, steps: [{ measured: bend, … }, { rule: stiff, when: last(bend.value) < 10, … }] }
 *
 * Instead:
 *     - { group: page, sheet: true, steps: [{ measured: bend, … }] }
 *     - { rule: stiff, when: last(bend.value) < 10, … }
 */
export default {
  code: 'sheet_rule',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { node, around } of rulesOf(draft)) {
      const sheet = around.find(isSheet)
      if (sheet === undefined) continue
      yield {
        at: draft.nameAt(node),
        message: `The rule "${node.name}" stands on the sheet "${sheet.name}", which is filled in in any order.`,
        mend: 'Put it behind the sheet, or take sheet: true away.',
      }
    }
  },
} satisfies Check
