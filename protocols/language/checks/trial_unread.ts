import type { Check } from '../check.ts'
import { namesRead } from '../convert/link.ts'
import { isTrial, stepsOf } from '../structure.ts'

/**
 * What it does: Each trial is read by some score, rule or loop, or chooses the row of a norm table.
 *
 * Why it matters: A trial that no formula reads is given for the record only; mostly a formula names
 * another step by mistake.
 *
 * Example:
 *     - { timed: run, … } … value: first(walk.time)
 *
 * Instead:
 *     value: first(run.time)
 */
export default {
  code: 'trial_unread',
  severity: 'advice',
  needs: ['scores', 'steps'],
  *run({ draft }) {
    // A formula that isn't understood may read any trial.
    if (draft.scores.length === 0 || draft.scores.some(({ value }) => value.type.is === 'null')) return
    const chosenBy = draft.norms.flatMap((norm) => draft.normTable(norm).columns.map(({ column }) => column))
    const read = new Set([...draft.expressions.flatMap((placed) => [...namesRead(placed)]), ...chosenBy])
    const steps = stepsOf(draft)
    // A formula over a practice trial is told by itself, and most likely means the trial beside it.
    if (steps.some(({ node }) => node.practice && read.has(node.name))) return
    for (const { node } of steps) {
      if (!isTrial(node) || node.practice || read.has(node.name)) continue
      yield {
        at: draft.nameAt(node),
        message: `No score reads the trial "${node.name}".`,
        mend: 'Read it in a formula, or mark it with practice: true.',
      }
    }
  },
} satisfies Check
