import type { Check } from '../check.ts'
import { stepsOf } from '../structure.ts'

/**
 * What it does: Half of the time is signalled only where it is known when all of it is over.
 *
 * Why it matters: Without a limit there is no half, and the signal that the client waits for never comes.
 *
 * Example:
 *     - { timed: run, …, half-time: true }
 *
 * Instead:
 *     - { timed: run, …, limit: 60 s, half-time: true }
 */
export default {
  code: 'half_time_without_limit',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { node } of stepsOf(draft)) {
      const { fields } = node
      if (fields['half-time'] !== true || fields.limit !== undefined || fields.window !== undefined) continue
      yield {
        at: draft.at(node, 'half-time'),
        message: `"${node.name}" signals half of its time, and has no limit.`,
        mend: 'Add limit with a time, or take half-time out.',
      }
    }
  },
} satisfies Check
