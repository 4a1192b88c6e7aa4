import type { Check } from '../check.ts'
import { STEP_KINDS } from '../schema/kinds.ts'
import { rulesOf, stepsOf } from '../structure.ts'

/**
 * What it does: What a rule credits a trial with is a number that the trial could have given: a grade of its
 * scale, and no number where it gives an answer in words.
 *
 * Why it matters: A credit enters the score like a grade that was seen; one outside the scale makes a sum that
 * no client can have.
 *
 * Example:
 *     - { rated: quality, scale: { 0: None, 1: Part, 2: Full } } … credit: { quality: 3 }
 *
 * Instead:
 *     - { rated: quality, scale: { 0: None, 1: Part, 2: Full } } … credit: { quality: 2 }
 */
export default {
  code: 'credit_not_fitting',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    const steps = new Map(stepsOf(draft).map(({ node }) => [node.name, node]))
    for (const { node: rule } of rulesOf(draft)) {
      for (const [name, credit] of Object.entries(rule.credit)) {
        const step = steps.get(name)
        const column = step && Object.values(STEP_KINDS.get(step.kind)?.columns(step) ?? {})[0]
        if (!step || !column) continue
        const at = draft.at(rule, 'credit', name)
        if (column.is !== 'number') {
          yield {
            at,
            message: `"${name}" gives no number, so it can't be credited with ${credit}.`,
            mend: 'Take it from credit: its rows are then "not given".',
          }
          continue
        }
        const { scale } = step.fields
        if (typeof scale !== 'object' || scale === null || Object.hasOwn(scale, credit)) continue
        yield {
          at,
          message: `${credit} is no grade of the scale of "${name}".`,
          mend: `Its grades are ${Object.keys(scale).join(', ')}: name one of them.`,
        }
      }
    }
  },
} satisfies Check
