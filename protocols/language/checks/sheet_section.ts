import type { Check } from '../check.ts'
import { SECTION_KINDS } from '../schema/kinds.ts'
import { isSheet } from '../sheet.ts'
import { sectionsOf } from '../structure.ts'

/**
 * What it does: All cells of a sheet are known when it begins: a sheet, and each section on it, is a group, a for-each
 * or a repeat without `until`. Only the sheet itself may name an order or be drawn, and no sheet stands on another.
 *
 * Why it matters: A page shows everything that is due on it. Passes that show only while others are given, and orders
 * within an order, have no place there.
 *
 * Example:
 *     - { group: page, sheet: true, steps: [{ repeat: round, times: { least: 1, most: 3 }, … }] }
 *
 * Instead:
 *     - { group: page, sheet: true, steps: [{ repeat: round, times: 3, … }] }
 */
export default {
  code: 'sheet_section',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { node, around } of sectionsOf(draft)) {
      const sheet = around.find(isSheet)
      if (sheet === undefined && !isSheet(node)) continue
      const passes = SECTION_KINDS.get(node.kind)?.onSheet?.(node, draft.draws) ?? null
      if (passes !== null && (sheet === undefined || (passes === 'free' && !isSheet(node)))) continue
      yield {
        at: draft.nameAt(node),
        message:
          passes === null
            ? `The passes of "${node.name}" show only while they are given, so they can’t stand on a sheet.`
            : isSheet(node)
              ? `The sheet "${node.name}" stands on the sheet "${sheet?.name}".`
              : `"${node.name}" has an order of its own on the sheet "${sheet?.name}".`,
        mend:
          passes === null
            ? 'Say how often it is given, or give it without sheet: true.'
            : isSheet(node)
              ? 'Take sheet: true away from one of the two.'
              : 'Take the order away, or give it to the sheet itself.',
      }
    }
  },
} satisfies Check
