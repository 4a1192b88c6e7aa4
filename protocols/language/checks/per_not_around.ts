import type { Check } from '../check.ts'
import { passesOf } from '../passes.ts'
import { offer } from '../schema/suggest.ts'
import { sectionsOf } from '../structure.ts'

/**
 * What it does: A list that is drawn `per` a loop is gone through inside that loop.
 *
 * Why it matters: The loop's passes have a bag each; elsewhere nobody could tell which bag to draw from.
 *
 * Example:
 *     lists: { pauses: { draw: { plain: 4, blank: 1 }, per: hnad } }
 *
 * Instead:
 *     lists: { pauses: { draw: { plain: 4, blank: 1 }, per: hand } }
 */
export default {
  code: 'per_not_around',
  severity: 'error',
  needs: ['lists', 'steps'],
  *run({ draft }) {
    for (const { node, around } of sectionsOf(draft)) {
      const list = node.fields.in
      const draw = typeof list === 'string' ? draft.draws[list] : undefined
      const per = draw?.per ?? null
      if (draw === undefined || per === null) continue
      const loops = around.flatMap((section) => passesOf(section, draft.draws)?.loop ?? [])
      if (loops.includes(per)) continue
      yield {
        at: draft.at(draw, 'per'),
        message: `"${node.name}" goes through "${String(list)}" outside of any loop "${per}".`,
        mend: offer(per, loops, 'loops around it'),
      }
    }
  },
} satisfies Check
