import type { Check } from '../check.ts'

/**
 * What it does: What is tallied has a key.
 *
 * Why it matters: Something that may happen several times in a running trial is counted with one press,
 * eyes on the hand.
 *
 * Example:
 *     fell: { seen: A ring falls., then: tally }
 *
 * Instead:
 *     fell: { seen: A ring falls., then: tally, key: f }
 */
export default {
  code: 'tally_without_key',
  severity: 'warning',
  needs: [],
  *run({ draft }) {
    for (const happening of draft.happenings) {
      if (happening.becomes !== 'tally' || happening.key !== null) continue
      yield {
        at: draft.headAt(happening),
        message: `"${happening.name}" is tallied without a key.`,
        mend: 'Add key with one letter.',
      }
    }
  },
} satisfies Check
