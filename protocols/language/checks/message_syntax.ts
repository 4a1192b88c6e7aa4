import type { Check } from '../check.ts'
import { messageFaults } from '../text-places.ts'

/**
 * What it does: Texts are ICU MessageFormat: what stands in braces is a name, or a choice by one.
 *
 * Why it matters: A text that can't be read would reach the examiner with its braces.
 *
 * Example:
 *     text: "Put the ring on {peg"
 *
 * Instead:
 *     text: "Put the ring on {peg}"   # or '{' for a brace itself
 */
export default {
  code: 'message_syntax',
  severity: 'error',
  needs: [],
  *run({ draft, wordings }) {
    for (const { at, reason } of messageFaults(draft, wordings)) {
      yield {
        at,
        message: `The braces of this text can't be read: ${reason}.`,
        mend: "Write {name} or {name, select, one {…} other {…}}; write '{' for a brace itself.",
      }
    }
  },
} satisfies Check
