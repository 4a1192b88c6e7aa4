import type { Check } from '../check.ts'
import { MOST_FIGURE_CHARACTERS } from '../reader/limits.ts'
import { figuresOf } from '../convert/protocol.ts'
import { unsafeParts } from '../figures/safe-svg.ts'

/**
 * What it does: Figures are plain drawings: no script, no event, nothing foreign inside, nothing loaded
 * from elsewhere, no declared entities.
 *
 * Why it matters: A figure is drawn in the program's own window; a clinic must be able to use a folder
 * from anybody without running its code.
 *
 * Example:
 *     <svg …><script>…</script></svg>
 *
 * Instead:
 *     <svg …><path d="…"/></svg>
 */
export default {
  code: 'figure_unsafe',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const [name, text] of Object.entries(figuresOf(draft))) {
      const file = `figures/${name}.svg`
      if (text.length > MOST_FIGURE_CHARACTERS) continue
      for (const { is, start, end, message, mend } of unsafeParts(text)) {
        if (is === 'unsafe') yield { at: { file, start, end }, message, mend }
      }
    }
  },
} satisfies Check
