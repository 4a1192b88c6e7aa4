import type { Check } from '../check.ts'
import { STATISTICS } from '../schema/top.ts'

/**
 * What it does: A change figure is above zero.
 *
 * Why it matters: With zero or less every difference would count as a real change.
 *
 * Example:
 *     change: [{ of: time, mdc95: 0 s, … }]
 *
 * Instead:
 *     change: [{ of: time, mdc95: 3.3 s, … }]
 */
export default {
  code: 'change_not_positive',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const figure of draft.change) {
      const key = Object.keys(STATISTICS).find((each) => draft.node(figure, each))
      if (key === undefined || !(figure.value <= 0)) continue
      yield {
        at: draft.at(figure, key),
        message: 'The figure is not above zero.',
        mend: 'Write it as printed in the source.',
      }
    }
  },
} satisfies Check
