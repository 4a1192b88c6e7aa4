import type { Check } from '../check.ts'
import { childOf } from '../reader/tree.ts'

/**
 * What it does: A protocol in another language than English words the four built-in void reasons itself.
 *
 * Why it matters: The program has them in English only; an examiner would read two languages in one list.
 *
 * Example:
 *     language: de   # and no happening timing_mistake
 *
 * Instead:
 *     timing_mistake: { seen: Die Zeit wurde falsch genommen., then: void }
 */
export default {
  code: 'reason_in_english',
  severity: 'warning',
  needs: [],
  *run({ draft }) {
    const language = childOf(draft.tree, 'language')
    if (language?.is !== 'scalar' || /^en(?![a-z])/i.test(language.written) || draft.isBroken(language))
      return
    const english = draft.happenings.filter((happening) => happening.builtIn && !draft.places.has(happening))
    if (english.length === 0) return
    yield {
      at: language.at,
      message: `These void reasons are there in English only: ${english.map(({ name }) => name).join(', ')}.`,
      mend: 'Write happenings of these names in the language of the protocol, or name them under forbids.',
    }
  },
} satisfies Check
