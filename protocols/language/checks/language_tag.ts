import type { Check } from '../check.ts'
import { childOf } from '../reader/tree.ts'

function canonical(tag: string): string | null {
  try {
    return /^[A-Za-z]{2,3}(-|$)/.test(tag) ? (Intl.getCanonicalLocales(tag)[0] ?? null) : null
  } catch {
    return null
  }
}

/**
 * What it does: The languages of the protocol and of its wording files are tags of BCP 47, such as `en` or
 * `de-CH`.
 *
 * Why it matters: Numbers and plurals in texts are written by the rules of that language.
 *
 * Example:
 *     language: english
 *
 * Instead:
 *     language: en
 */
export default {
  code: 'language_tag',
  severity: 'error',
  needs: [],
  *run({ draft, wordings }) {
    for (const tree of [draft.tree, ...wordings.map((wording) => wording.tree)]) {
      const language = childOf(tree, 'language')
      if (language?.is !== 'scalar' || typeof language.value !== 'string') continue
      const tag = canonical(language.written)
      if (tag === language.written) continue
      yield {
        at: language.at,
        message: `"${language.written}" is no language tag.`,
        mend: tag === null ? 'Write a tag such as en, de or pt-BR.' : `Write ${tag}.`,
      }
    }
  },
} satisfies Check
