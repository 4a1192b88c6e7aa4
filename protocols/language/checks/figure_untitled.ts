import type { Check } from '../check.ts'
import { figuresOf } from '../convert/protocol.ts'
import { hasTitle } from '../figures/safe-svg.ts'

/**
 * What it does: A figure has a `title` that says in words what it shows.
 *
 * Why it matters: An examiner who uses a screen reader hears the title instead of seeing the drawing.
 *
 * Example:
 *     <svg …><path d="…"/></svg>
 *
 * Instead:
 *     <svg …><title>Seated, board at the midline</title><path d="…"/></svg>
 */
export default {
  code: 'figure_untitled',
  severity: 'advice',
  needs: [],
  *run({ draft }) {
    for (const [name, text] of Object.entries(figuresOf(draft))) {
      if (hasTitle(text)) continue
      yield {
        at: { file: `figures/${name}.svg`, start: 0, end: 0 },
        message: 'The figure has no title.',
        mend: 'Add <title> with a line of words as the first thing in it.',
      }
    }
  },
} satisfies Check
