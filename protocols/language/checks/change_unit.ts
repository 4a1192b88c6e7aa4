import type { Check } from '../check.ts'
import { STATISTICS } from '../schema/top.ts'
import { unitFactor, unitOf } from '../units.ts'

/**
 * What it does: A change figure is in its score's unit, in one that converts to it, or in % of the first
 * value.
 *
 * Why it matters: A change of 3 s says nothing about a count.
 *
 * Example:
 *     change: [{ of: blocks, mdc95: 5.5 s, … }]
 *
 * Instead:
 *     change: [{ of: blocks, mdc95: 5.5, … }]
 */
export default {
  code: 'change_unit',
  severity: 'error',
  needs: ['scores'],
  *run({ draft }) {
    for (const figure of draft.change) {
      const score = draft.scores.find(({ name }) => name === figure.of)
      if (!score || figure.unit === '%' || unitOf(figure.unit) === null || unitOf(score.unit) === null)
        continue
      if (unitFactor(figure.unit, score.unit) !== null) continue
      const key = Object.keys(STATISTICS).find((each) => draft.node(figure, each)) ?? 'sem'
      yield {
        at: draft.at(figure, key),
        message: `"${figure.unit}" does not convert to "${score.unit}", the unit of "${score.name}".`,
        mend: "Write the figure in the score's unit, or in % of the first value.",
      }
    }
  },
} satisfies Check
