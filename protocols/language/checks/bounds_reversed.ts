import type { Check } from '../check.ts'
import { type Entry, type Tree } from '../reader/tree.ts'

const PAIRS = new Set(['range', 'minutes'])

function* entriesIn(tree: Tree): Iterable<Entry> {
  if (tree.is === 'list') for (const item of tree.items) yield* entriesIn(item)
  if (tree.is !== 'map') return
  for (const entry of tree.entries) {
    yield entry
    yield* entriesIn(entry.value)
  }
}

/**
 * What it does: Of two bounds the lower stands first.
 *
 * Why it matters: With the bounds the wrong way round every value lies outside, and each would be asked
 * for again.
 *
 * Example:
 *     range: [120, 0]
 *
 * Instead:
 *     range: [0, 120]
 */
export default {
  code: 'bounds_reversed',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { key, value } of entriesIn(draft.tree)) {
      if (!PAIRS.has(key) || value.is !== 'list' || value.items.length !== 2) continue
      const [low, high] = value.items
      if (low?.is !== 'scalar' || high?.is !== 'scalar') continue
      if (typeof low.value !== 'number' || typeof high.value !== 'number' || low.value < high.value) continue
      if (key === 'minutes' && low.value === high.value) continue
      yield {
        at: value.at,
        message: `The bounds of "${key}" leave nothing between them: ${low.written} and ${high.written}.`,
        mend: `Write the lower one first, such as [${high.written}, ${low.written}].`,
      }
    }
  },
} satisfies Check
