import type { Check } from '../check.ts'
import { offer } from '../schema/suggest.ts'
import { entryOf, childOf } from '../reader/tree.ts'

/**
 * What it does: Each key of a wording file is that of a text of the protocol.
 *
 * Why it matters: Words under another key are never read; the step would be read in the protocol's own
 * language.
 *
 * Example:
 *     texts: { explian.text: … }
 *
 * Instead:
 *     texts: { explain.text: … }
 */
export default {
  code: 'wording_key_unknown',
  severity: 'error',
  needs: [],
  *run({ draft, wordings }) {
    if (
      draft.isBrokenIn(
        'about',
        'precautions',
        'kit',
        'conditions',
        'lists',
        'happenings',
        'steps',
        'scores',
        'norms',
      )
    )
      return
    const known = [...draft.texts.keys()]
    for (const { tree } of wordings) {
      const texts = childOf(tree, 'texts')
      if (texts?.is !== 'map') continue
      for (const { key } of texts.entries) {
        if (draft.texts.has(key)) continue
        const at = entryOf(texts, key)?.keyAt ?? texts.at
        yield { at, message: `The protocol has no text "${key}".`, mend: offer(key, known, 'texts') }
      }
    }
  },
} satisfies Check
