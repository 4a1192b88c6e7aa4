import type { Check } from '../check.ts'
import { passesOf } from '../passes.ts'
import { offer } from '../schema/suggest.ts'
import { readMessage } from '../messages.ts'

/**
 * What it does: A name in braces is a loop around the step, or a condition.
 *
 * Why it matters: Nothing else has a value when the text is read; the client would hear a gap.
 *
 * Example:
 *     - { instruct: say, text: "Take the {ring} ring." }   # no loop or condition ring
 *
 * Instead:
 *     - for-each: ring … - { instruct: say, text: "Take the {ring} ring." }
 */
export default {
  code: 'message_argument_unknown',
  severity: 'error',
  needs: [],
  *run({ draft, names }) {
    const conditions = names.filter(({ of }) => of === 'condition').map(({ name }) => name)
    for (const { words, at, around } of draft.texts.values()) {
      const loops = around.flatMap((section) => passesOf(section, draft.draws)?.loop ?? [])
      const known = [...loops, ...conditions]
      for (const name of readMessage(words).arguments) {
        if (known.includes(name)) continue
        yield {
          at,
          message: `Nothing named "${name}" has a value where this text is read.`,
          mend: offer(name, known, 'loops or conditions'),
        }
      }
    }
  },
} satisfies Check
