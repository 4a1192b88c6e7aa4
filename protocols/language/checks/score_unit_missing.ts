import type { Check } from '../check.ts'

/**
 * What it does: A score that is a number states its unit: a UCUM code, `1` for a ratio, `{score}` for
 * points.
 *
 * Why it matters: A number without a unit is compared with a norm or an earlier value in another one
 * sooner or later.
 *
 * Example:
 *     - { score: time, each: hand, value: first(run.time), better: lower }
 *
 * Instead:
 *     - { score: time, each: hand, value: first(run.time), unit: s, better: lower }
 */
export default {
  code: 'score_unit_missing',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const score of draft.scores) {
      const { type } = score.value
      if (type.is !== 'number' || draft.node(score, 'unit')) continue
      const unit = type.unit ?? '1'
      yield {
        at: draft.nameAt(score),
        message: `The score "${score.name}" is a number without a unit.`,
        mend: `Add its unit, such as unit: ${unit.includes('{') ? `"${unit}"` : unit}.`,
      }
    }
  },
} satisfies Check
