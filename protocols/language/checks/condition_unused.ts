import type { Check } from '../check.ts'
import { namesRead } from '../convert/link.ts'
import { readMessage } from '../messages.ts'

/**
 * What it does: Each condition is read by an expression, shown in a text, or named where norms or change
 * figures were gathered.
 *
 * Why it matters: A condition that nothing looks at is asked at every visit for no use.
 *
 * Example:
 *     conditions: { light: { set-by: clinic, options: { day: Daylight, lamp: Lamp } } }   # named nowhere
 *
 * Instead:
 *     gathered: { light: day }
 */
export default {
  code: 'condition_unused',
  severity: 'advice',
  needs: ['conditions', 'steps', 'scores', 'norms', 'change'],
  *run({ draft }) {
    const used = new Set([
      ...draft.expressions.flatMap((placed) => [...namesRead(placed)]),
      ...[...draft.norms, ...draft.change].flatMap(({ gathered }) => Object.keys(gathered)),
      ...[...draft.texts.values()].flatMap(({ words }) => readMessage(words).arguments),
    ])
    for (const { name, at, setBy } of draft.conditions) {
      if (used.has(name) || setBy === 'file') continue
      yield {
        at,
        message: `Nothing reads the condition "${name}".`,
        mend: 'Name it where norms were gathered, read it in a formula, or take it away.',
      }
    }
  },
} satisfies Check
