import type { Check } from '../check.ts'
import { entryOf } from '../reader/tree.ts'
import { STEP_KINDS } from '../schema/kinds.ts'
import { isTrial, stepsOf } from '../structure.ts'

/**
 * What it does: Keys about trials (`practice`, `voids`, `counts-as`, `of`) stand at steps that measure
 * something.
 *
 * Why it matters: At a step without a trial they mean nothing, though the file seems to say something.
 *
 * Example:
 *     - { instruct: explain, text: Take one peg., practice: true }
 *
 * Instead:
 *     - { timed: try_out, practice: true, start: { seen: touched }, stop: { seen: home } }
 */
export default {
  code: 'key_needs_trial',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { node } of stepsOf(draft)) {
      if (isTrial(node)) continue
      const own = STEP_KINDS.get(node.kind)?.keys.shape ?? {}
      for (const key of ['practice', 'voids', 'counts-as', 'of']) {
        const entry = entryOf(draft.places.get(node), key)
        if (!entry || Object.hasOwn(own, key)) continue
        yield {
          at: entry.keyAt,
          message: `"${key}" means nothing here: "${node.name}" is no trial.`,
          mend: 'Take it away, or write it at the trial.',
        }
      }
    }
  },
} satisfies Check
