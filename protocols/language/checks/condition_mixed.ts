import type { Check } from '../check.ts'
import { unitFactor, unitOf } from '../units.ts'

/**
 * What it does: The values of one condition are all numbers, all quantities that convert to one another,
 * or all texts.
 *
 * Why it matters: A formula that reads the condition needs one type and one unit.
 *
 * Example:
 *     fill: { set-by: clinic, values: [60 s, slow] }
 *
 * Instead:
 *     fill: { set-by: clinic, values: [60 s, 90 s] }
 */
export default {
  code: 'condition_mixed',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const condition of draft.conditions) {
      const [first, ...others] = condition.options
      if (!first) continue
      for (const [index, { value, id }] of others.entries()) {
        const alike =
          typeof first.value === 'string' || typeof value === 'string'
            ? typeof first.value === typeof value
            : unitOf(value.unit) === null ||
              unitOf(first.value.unit) === null ||
              unitFactor(value.unit, first.value.unit) !== null
        if (alike) continue
        yield {
          at: draft.at(condition, 'values', index + 1),
          message: `"${id}" is of another kind than "${first.id}".`,
          mend: 'Write all values of the condition in the same way.',
        }
      }
    }
  },
} satisfies Check
