import type { Check } from '../check.ts'

/**
 * What it does: Only what is tallied adds time.
 *
 * Why it matters: Time is added once for each press; what is not tallied has none.
 *
 * Example:
 *     fell: { seen: A ring falls., then: go-on, adds: 5 s }
 *
 * Instead:
 *     fell: { seen: A ring falls., then: tally, key: f, adds: 5 s }
 */
export default {
  code: 'adds_without_tally',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const happening of draft.happenings) {
      if (happening.adds === null || happening.becomes === 'tally') continue
      yield {
        at: draft.at(happening, 'adds'),
        message: `"${happening.name}" adds time but is not tallied.`,
        mend: 'Write then: tally with a key, or take adds away.',
      }
    }
  },
} satisfies Check
