import type { Check } from '../check.ts'
import { offer } from '../schema/suggest.ts'
import { readMessage } from '../messages.ts'
import { childOf } from '../reader/tree.ts'

/**
 * What it does: Words in another language put in the same names in braces as the protocol's own, or fewer.
 *
 * Why it matters: A name that the text doesn't have at its place would leave a gap in what is read.
 *
 * Example:
 *     explain.text: "Nehmen Sie {ringe}"   # the protocol says {ring}
 *
 * Instead:
 *     explain.text: "Nehmen Sie {ring}"
 */
export default {
  code: 'wording_argument',
  severity: 'error',
  needs: [],
  *run({ draft, wordings }) {
    const conditions = draft.conditions.map(({ name }) => name)
    for (const { tree } of wordings) {
      const texts = childOf(tree, 'texts')
      if (texts?.is !== 'map') continue
      for (const { key, value } of texts.entries) {
        const own = draft.texts.get(key)
        if (!own || value.is !== 'scalar') continue
        const known = [
          ...readMessage(own.words).arguments,
          ...own.around.map(({ name }) => name),
          ...conditions,
        ]
        for (const name of readMessage(value.written).arguments) {
          if (known.includes(name)) continue
          yield {
            at: value.at,
            message: `Nothing named "${name}" has a value where this text is read.`,
            mend: offer(name, [...new Set(known)], "names in the protocol's own words"),
          }
        }
      }
    }
  },
} satisfies Check
