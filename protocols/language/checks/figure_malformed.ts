import type { Check } from '../check.ts'
import { figuresOf } from '../convert/protocol.ts'
import { unsafeParts } from '../figures/safe-svg.ts'
import { MOST_FIGURE_CHARACTERS } from '../reader/limits.ts'

/**
 * What it does: Figures are well-formed SVG: one drawing, every tag closed, every attribute quoted.
 *
 * Why it matters: A broken drawing is shown as nothing, or as half of itself, in front of the client.
 *
 * Example:
 *     <svg …><g><path d="…"/></svg>
 *
 * Instead:
 *     <svg …><g><path d="…"/></g></svg>
 */
export default {
  code: 'figure_malformed',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const [name, text] of Object.entries(figuresOf(draft))) {
      if (text.length > MOST_FIGURE_CHARACTERS) continue
      const first = unsafeParts(text).find(({ is }) => is === 'malformed')
      if (!first) continue
      const { start, end, message, mend } = first
      yield { at: { file: `figures/${name}.svg`, start, end }, message, mend }
    }
  },
} satisfies Check
