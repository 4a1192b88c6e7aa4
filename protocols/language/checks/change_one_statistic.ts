import type { Check } from '../check.ts'
import { STATISTICS } from '../schema/top.ts'

/**
 * What it does: A change figure gives exactly one of sem, mdc90, mdc95, mcid.
 *
 * Why it matters: They answer different questions: error of measurement, smallest real difference,
 * smallest difference that matters.
 *
 * Example:
 *     change: [{ of: time, sem: 1.2 s, mdc95: 3.3 s, … }]
 *
 * Instead:
 *     change:
 *       - { of: time, sem: 1.2 s, … }
 *       - { of: time, mdc95: 3.3 s, … }
 */
export default {
  code: 'change_one_statistic',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const figure of draft.change) {
      const given = Object.keys(STATISTICS).filter((key) => draft.node(figure, key))
      if (given.length === 1) continue
      yield {
        at: given[1] === undefined ? draft.headAt(figure) : draft.at(figure, given[1]),
        message:
          given.length === 0 ? 'The figure gives no statistic.' : `The figure gives ${given.join(' and ')}.`,
        mend:
          given.length === 0 ? 'Add one of sem, mdc90, mdc95, mcid.' : 'Write each as a figure of its own.',
      }
    }
  },
} satisfies Check
