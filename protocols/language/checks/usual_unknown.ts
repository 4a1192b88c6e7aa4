import type { Check } from '../check.ts'
import { offer } from '../schema/suggest.ts'

/**
 * What it does: What is usual for a condition is one of the things it can be.
 *
 * Why it matters: The usual value is proposed to the examiner; one that doesn't exist can't be.
 *
 * Example:
 *     fill: { set-by: clinic, values: [60 s, 61 s], usual: 62 s }
 *
 * Instead:
 *     fill: { set-by: clinic, values: [60 s, 61 s], usual: 60 s }
 */
export default {
  code: 'usual_unknown',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const condition of draft.conditions) {
      const values = condition.options.map(({ id }) => id)
      if (condition.usual === null || values.length === 0 || values.includes(condition.usual)) continue
      yield {
        at: draft.at(condition, 'usual'),
        message: `"${condition.name}" can't be "${condition.usual}".`,
        mend: offer(condition.usual, values, 'values'),
      }
    }
  },
} satisfies Check
