import type { Check } from '../check.ts'
import { STEP_KINDS } from '../schema/kinds.ts'
import { isTrial, stepsOf } from '../structure.ts'

/**
 * What it does: The kit is checked, the position taken and the words said before the first trial.
 *
 * Why it matters: A trial given before the client knows what to do, or sits as the source says, can't be
 * compared with its norms (STD-ADM-8).
 *
 * Example:
 *     steps:
 *       - { timed: run, … }
 *       - { instruct: explain, text: … }
 *
 * Instead:
 *     steps:
 *       - { instruct: explain, text: … }
 *       - { timed: run, … }
 */
export default {
  code: 'trial_too_early',
  severity: 'warning',
  needs: ['steps'],
  *run({ draft }) {
    const steps = stepsOf(draft)
    const trial = steps.find(({ node }) => isTrial(node))
    if (!trial) return
    for (const { kind, precedes, keys } of STEP_KINDS.values()) {
      // A kind of step that names pieces of the kit has nothing to name in a test without any.
      const idle = Object.hasOwn(keys.shape, 'of') && draft.kit.length === 0
      if (!precedes || idle || steps.some(({ node, order }) => node.kind === kind && order < trial.order))
        continue
      yield {
        at: draft.nameAt(trial.node),
        message: `No step of the kind "${kind}" comes before the first trial, "${trial.node.name}".`,
        mend: `Put one before it: - { ${kind}: …, … }.`,
      }
    }
  },
} satisfies Check
