import type { Check } from '../check.ts'
import { STEP_KINDS } from '../schema/kinds.ts'
import { stepsOf } from '../structure.ts'

const OPENINGS = ['go', 'first_press']

/**
 * What it does: Where an expression says what opens a window of taps, it gives `go` or `first_press`.
 *
 * Why it matters: By a cue the press that starts is the examiner's, else it is the client's first and counts:
 * anything else would leave open whose press it is.
 *
 * Example:
 *     begins: { set-by: clinic, options: { said: Go, touched: First press }, usual: said } … start: { from: begins }
 *
 * Instead:
 *     begins: { set-by: clinic, options: { go: Go, first_press: First press }, usual: go } … start: { from: begins }
 */
export default {
  code: 'tapped_start',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { node } of stepsOf(draft)) {
      const { shape } = STEP_KINDS.get(node.kind)?.keys ?? { shape: {} }
      if (!Object.hasOwn(shape, 'bounce')) continue
      const placed = draft.expressions.find(({ node: at }) => at === draft.node(node, 'start', 'from'))
      if (placed?.hole.type.is !== 'text') continue
      const { oneOf } = placed.hole.type
      if (oneOf?.every((each) => OPENINGS.includes(each))) continue
      yield {
        at: placed.node.at,
        message: `What opens the window is "go" or "first_press"; this can be something else.`,
        mend: 'Name the two options go and first_press.',
      }
    }
  },
} satisfies Check
