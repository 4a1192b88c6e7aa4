import type { Check } from '../check.ts'
import { figuresOf } from '../convert/protocol.ts'
import { mirrorSum, writtenHand } from '../figures/shown-figure.ts'
import { MOST_FIGURE_CHARACTERS } from '../reader/limits.ts'

/**
 * What it does: A figure that says which hand it shows (`data-hand` at its root) says `left` or `right`, and
 * has a `viewBox`.
 *
 * Why it matters: It is mirrored for the other hand, about the middle of its `viewBox`. Without these the
 * examiner would see the wrong hand in the place of the right one.
 *
 * Example:
 *     <svg data-hand="dominant" …>
 *
 * Instead:
 *     <svg data-hand="right" viewBox="0 0 480 280" …>
 */
export default {
  code: 'figure_hand',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const [name, text] of Object.entries(figuresOf(draft))) {
      if (text.length > MOST_FIGURE_CHARACTERS) continue
      const hand = writtenHand(text)
      if (hand === null) continue
      const at = { file: `figures/${name}.svg`, start: 0, end: 0 }
      if (hand !== 'left' && hand !== 'right') {
        yield {
          at,
          message: `The figure is of the hand "${hand}".`,
          mend: 'Write data-hand="right", data-hand="left", or take it away where both hands look the same.',
        }
      } else if (mirrorSum(text) === null) {
        yield {
          at,
          message: 'The figure is of one hand and can’t be mirrored for the other.',
          mend: 'Add viewBox="0 0 WIDTH HEIGHT" to the svg.',
        }
      }
    }
  },
} satisfies Check
