import type { Check } from '../check.ts'

/**
 * What it does: Each happening has a key of its own.
 *
 * Why it matters: One press would stand for two different things.
 *
 * Example:
 *     fell: { …, then: tally, key: f }
 *     fast: { …, then: tally, key: f }
 *
 * Instead:
 *     fell: { …, then: tally, key: f }
 *     fast: { …, then: tally, key: q }
 */
export default {
  code: 'key_clash',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    const seen = new Map<string, string>()
    for (const happening of draft.happenings) {
      if (happening.key === null) continue
      const key = happening.key.toLowerCase()
      const first = seen.get(key)
      if (first !== undefined) {
        yield {
          at: draft.at(happening, 'key'),
          message: `The key "${happening.key}" is already that of "${first}".`,
          mend: 'Give one of them another key.',
        }
      } else {
        seen.set(key, happening.name)
      }
    }
  },
} satisfies Check
