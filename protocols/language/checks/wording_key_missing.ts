import type { Check } from '../check.ts'
import { entryOf, childOf } from '../reader/tree.ts'

/**
 * What it does: A wording file has words for every text of the protocol.
 *
 * Why it matters: A text that is missing comes in the protocol's own language in the middle of the other.
 *
 * Example:
 *     texts: { title: Ringbrett }   # and nothing for explain.text
 *
 * Instead:
 *     texts: { title: Ringbrett, explain.text: … }
 */
export default {
  code: 'wording_key_missing',
  severity: 'warning',
  needs: [],
  *run({ draft, wordings }) {
    for (const { tree } of wordings) {
      const texts = childOf(tree, 'texts')
      if (texts?.is !== 'map') continue
      const missing = [...draft.texts.values()].filter(
        ({ key, words }) => words !== '' && !entryOf(texts, key),
      )
      if (missing.length === 0) continue
      const shown = missing.slice(0, 8).map(({ key }) => key)
      const rest = missing.length - shown.length
      yield {
        at: entryOf(tree, 'texts')?.keyAt ?? texts.at,
        message: `${missing.length === 1 ? 'One text has' : `${missing.length} texts have`} no words here: ${shown.join(', ')}${rest > 0 ? ` and ${rest} more` : ''}.`,
        mend: 'Add them; until then they come in the words of the protocol.',
      }
    }
  },
} satisfies Check
