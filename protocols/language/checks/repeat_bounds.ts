import type { Check } from '../check.ts'
import { sectionsOf } from '../structure.ts'

/** The number behind `is` of a value that the file fixes. */
function fixed(value: unknown): number | null {
  if (typeof value !== 'object' || value === null || !('is' in value)) return null
  return typeof value.is === 'number' ? value.is : null
}

/**
 * What it does: A repeated section is given at least once, and its fewest passes are not more than its
 * most.
 *
 * Why it matters: With no pass, or fewer allowed than needed, its trials are never given.
 *
 * Example:
 *     - { repeat: run, times: { least: 5, most: 3 }, until: steady, steps: [ … ] }
 *
 * Instead:
 *     - { repeat: run, times: { least: 3, most: 5 }, until: steady, steps: [ … ] }
 */
export default {
  code: 'repeat_bounds',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { node } of sectionsOf(draft)) {
      const times: unknown = node.fields.times
      const bounds = typeof times === 'object' && times !== null ? times : {}
      const least = 'least' in bounds ? fixed(bounds.least) : null
      const most = 'most' in bounds ? fixed(bounds.most) : fixed(times)
      if (most === 0) {
        yield {
          at: draft.at(node, 'times'),
          message: `"${node.name}" is never given: its passes are at most 0.`,
          mend: 'Write a number from 1.',
        }
      } else if (least !== null && most !== null && least > most) {
        yield {
          at: draft.at(node, 'times', 'least'),
          message: `"${node.name}" needs at least ${least} passes and allows at most ${most}.`,
          mend: 'Write the smaller number as least.',
        }
      }
    }
  },
} satisfies Check
