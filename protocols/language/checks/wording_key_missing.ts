import type { Check } from '../check.ts'
import { writtenOf } from '../convert/values.ts'
import { entryOf, childOf } from '../reader/tree.ts'
import { languageAtLarge } from '../words.ts'

/**
 * What it does: A wording file in another language has words for every text of the protocol, itself or in a file of
 * that language at large (`de` for `de-CH`). One in the protocol's own language may hold a few texts only, such as
 * words that a clinic is licensed to use.
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
    const own = writtenOf(childOf(draft.tree, 'language')) ?? ''
    for (const { tree } of wordings) {
      const texts = childOf(tree, 'texts')
      const language = writtenOf(childOf(tree, 'language')) ?? ''
      if (texts?.is !== 'map' || languageAtLarge(language) === languageAtLarge(own)) continue
      const kin = wordings.filter(
        (other) => writtenOf(childOf(other.tree, 'language')) === languageAtLarge(language),
      )
      const places = [texts, ...kin.map((other) => childOf(other.tree, 'texts'))]
      const missing = [...draft.texts.values()].filter(
        ({ key, words }) => words !== '' && !places.some((place) => entryOf(place, key)),
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
