import type { Check } from '../check.ts'
import { childOf } from '../reader/tree.ts'
import { isTrial, stepsOf } from '../structure.ts'

/**
 * What it does: A protocol has at least one trial that isn't practice.
 *
 * Why it matters: Nothing would be measured.
 *
 * Example:
 *     steps: [{ instruct: explain, text: … }]
 *
 * Instead:
 *     steps: [{ instruct: explain, text: … }, { timed: run, … }]
 */
export default {
  code: 'trial_missing',
  severity: 'warning',
  needs: ['steps'],
  *run({ draft }) {
    if (stepsOf(draft).some(({ node }) => isTrial(node) && !node.practice)) return
    const steps = childOf(draft.tree, 'steps')
    if (steps?.is !== 'list' || !steps.items[0]) return
    yield {
      at: steps.items[0].at,
      message: 'The protocol measures nothing.',
      mend: 'Add a trial, such as a timed step.',
    }
  },
} satisfies Check
