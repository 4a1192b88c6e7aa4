import type { Check } from '../check.ts'

const RESERVED: Readonly<Record<string, string>> = {
  v: 'makes a trial void',
  u: 'takes back the last act',
  k: 'covers the screen',
  '?': 'shows the keys',
}

/**
 * What it does: A happening's key is none of those by which the program itself protects the trial: void
 * (v), undo (u), cover (k), help (?).
 *
 * Why it matters: The program would keep the key for itself, and the happening would be without one.
 *
 * Example:
 *     fell: { seen: A ring falls., then: tally, key: v }
 *
 * Instead:
 *     fell: { seen: A ring falls., then: tally, key: f }
 */
export default {
  code: 'key_reserved',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const happening of draft.happenings) {
      const use = happening.key === null ? undefined : RESERVED[happening.key.toLowerCase()]
      if (use === undefined) continue
      yield {
        at: draft.at(happening, 'key'),
        message: `The key "${happening.key}" already ${use}.`,
        mend: 'Choose another letter.',
      }
    }
  },
} satisfies Check
