import type { Check } from '../check.ts'
import { namesRead } from '../convert/link.ts'
import { stepsOf } from '../structure.ts'

/**
 * What it does: No formula reads a practice trial.
 *
 * Why it matters: A practice trial is no row: the formula would never have a value.
 *
 * Example:
 *     - { timed: try_out, practice: true, … } … value: first(try_out.time)
 *
 * Instead:
 *     - { timed: run, … } … value: first(run.time)
 */
export default {
  code: 'practice_read',
  severity: 'error',
  needs: ['steps'],
  *run({ draft }) {
    const practice = new Set(
      stepsOf(draft)
        .filter(({ node }) => node.practice)
        .map(({ node }) => node.name),
    )
    for (const placed of draft.expressions) {
      for (const name of namesRead(placed)) {
        if (!practice.has(name)) continue
        yield {
          at: placed.node.at,
          message: `"${name}" is a practice trial, which has no rows.`,
          mend: 'Read the trial that counts, or take practice: true away.',
        }
      }
    }
  },
} satisfies Check
