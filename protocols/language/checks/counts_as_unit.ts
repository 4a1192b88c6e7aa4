import type { Check } from '../check.ts'
import { STEP_KINDS } from '../schema/kinds.ts'
import { stepsOf } from '../structure.ts'
import { unitFactor, unitOf } from '../units.ts'

/**
 * What it does: What an outcome counts as is in the unit that the trial measures, or one that converts to
 * it.
 *
 * Why it matters: A time can't stand in for a force.
 *
 * Example:
 *     - { measured: squeeze, unit: kgf, …, counts-as: { unable: 0 s } }
 *
 * Instead:
 *     - { measured: squeeze, unit: kgf, …, counts-as: { unable: 0 kgf } }
 */
export default {
  code: 'counts_as_unit',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { node } of stepsOf(draft)) {
      const first = Object.values(STEP_KINDS.get(node.kind)?.columns(node) ?? {})[0]
      if (first?.is !== 'number' || first.unit === null || unitOf(first.unit) === null) continue
      for (const [outcome, counts] of Object.entries(node.countsAs)) {
        if (!('is' in counts.value)) continue
        const { unit } = counts.value.is
        if (unitOf(unit) === null || unitFactor(unit, first.unit) !== null) continue
        yield {
          at: draft.node(node, 'counts-as', outcome)
            ? draft.at(node, 'counts-as', outcome)
            : draft.at(node, 'counts-as'),
          message: `"${unit}" does not convert to "${first.unit}", which this trial measures.`,
          mend: `Write the value in ${first.unit}.`,
        }
      }
    }
  },
} satisfies Check
