import type { Check } from '../check.ts'
import { canBeDrawn } from '../../sections/for-each/draw.ts'

/**
 * What it does: A drawn list can be laid out with no more than so many alike in a row.
 *
 * Why it matters: Nine ones among one two can't be parted so that no three stand together: there is no such draw.
 *
 * Example:
 *     lists: { touches: { draw: { one: 9, two: 1 }, alike-in-row: 3 } }
 *
 * Instead:
 *     lists: { touches: { draw: { one: 5, two: 5 }, alike-in-row: 3 } }
 */
export default {
  code: 'draw_impossible',
  severity: 'error',
  needs: ['lists'],
  *run({ draft }) {
    for (const [list, draw] of Object.entries(draft.draws)) {
      if (canBeDrawn(draw)) continue
      yield {
        at: draft.at(draw, 'alike-in-row'),
        message: `"${list}" can't be drawn with at most ${draw.alikeInRow} alike in a row.`,
        mend: 'Allow more in a row, or draw more of the others.',
      }
    }
  },
} satisfies Check
