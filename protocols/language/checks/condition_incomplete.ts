import type { Check } from '../check.ts'
import { childOf } from '../reader/tree.ts'

/**
 * What it does: A condition is either fixed (`is`), or names who sets it (`set-by`) and what it can be
 * (`options` or `values`).
 *
 * Why it matters: A condition that nobody sets, or that can be anything, never matches the norms.
 *
 * Example:
 *     conditions: { board: { options: { oak: Oak, cork: Cork } } }
 *
 * Instead:
 *     conditions: { board: { set-by: kit, options: { oak: Oak, cork: Cork } } }
 */
export default {
  code: 'condition_incomplete',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const condition of draft.conditions) {
      const tree = draft.places.get(condition)
      const has = (key: string): boolean => childOf(tree, key) !== null
      const at = condition.at
      if (has('is')) {
        const more = ['set-by', 'options', 'values', 'usual'].find(has)
        if (!more) continue
        yield {
          at: draft.at(condition, more),
          message: `"${condition.name}" is fixed by "is", so "${more}" means nothing.`,
          mend: `Take "${more}" away, or "is".`,
        }
      } else if (!has('set-by')) {
        yield {
          at,
          message: `Nobody sets "${condition.name}".`,
          mend: 'Add set-by: kit, clinic or examiner; or is: with a value.',
        }
      } else if (has('options') === has('values')) {
        yield {
          at,
          message: `"${condition.name}" needs either options or values.`,
          mend: 'Write options: { id: words, … } for what is picked by name, or values: [60 s, 61 s].',
        }
      }
    }
  },
} satisfies Check
