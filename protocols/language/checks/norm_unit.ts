import type { Check } from '../check.ts'
import { unitFactor, unitOf } from '../units.ts'

/**
 * What it does: A norm's unit converts to the unit of its score.
 *
 * Why it matters: A mean in pounds of mass or in blocks a minute can't be set against a force or a count.
 *
 * Example:
 *     scores: [{ score: grip, unit: kgf, … }]
 *     norms: [{ norm: adults, of: grip, unit: "[lb_av]", … }]
 *
 * Instead:
 *     norms: [{ norm: adults, of: grip, unit: "[lbf_av]", … }]
 */
export default {
  code: 'norm_unit',
  severity: 'error',
  needs: ['scores'],
  *run({ draft }) {
    for (const norm of draft.norms) {
      const score = draft.scores.find(({ name }) => name === norm.of)
      if (!score || unitOf(norm.unit) === null || unitOf(score.unit) === null) continue
      if (unitFactor(norm.unit, score.unit) !== null) continue
      yield {
        at: draft.at(norm, 'unit'),
        message: `The norm is in "${norm.unit}", which does not convert to "${score.unit}", the unit of "${score.name}".`,
        mend: 'State the unit that the table is printed in; where it measures something else, name another score.',
      }
    }
  },
} satisfies Check
