import type { Check } from '../check.ts'
import { STEP_KINDS } from '../schema/kinds.ts'
import { stepsOf } from '../structure.ts'

/**
 * What it does: How far a trial went at its limit is asked only where it has one.
 *
 * Why it matters: Without a limit it is never asked, and the column stays empty.
 *
 * Example:
 *     - { timed: turn, start: { said: go }, stop: { seen: last peg in }, reached: { pegs: { of: 16 } } }
 *
 * Instead:
 *     - { timed: turn, start: { said: go }, stop: { seen: last peg in }, limit: 300 s, reached: { pegs: { of: 16 } } }
 */
export default {
  code: 'reached_without_limit',
  severity: 'warning',
  needs: [],
  *run({ draft }) {
    for (const { node } of stepsOf(draft)) {
      const own = STEP_KINDS.get(node.kind)?.keys.shape ?? {}
      if (!Object.hasOwn(own, 'reached') || node.fields.reached === undefined) continue
      if (node.fields.limit !== undefined) continue
      yield {
        at: draft.at(node, 'reached'),
        message: `"${node.name}" has no limit, so it is never asked how far it went.`,
        mend: 'Add limit with a time, or take reached away.',
      }
    }
  },
} satisfies Check
