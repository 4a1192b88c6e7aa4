import type { Check } from '../check.ts'
import { offer } from '../schema/suggest.ts'

/**
 * What it does: `gathered` speaks of conditions that the protocol declares, with values that they can
 * have, or `unknown`.
 *
 * Why it matters: A norm gathered under another name or value could never be matched, and would be
 * withheld or shown wrongly.
 *
 * Example:
 *     gathered: { board: oka }   # the condition board has oak and cork
 *
 * Instead:
 *     gathered: { board: oak }
 */
export default {
  code: 'gathered_unknown',
  severity: 'error',
  needs: ['conditions'],
  *run({ draft, names }) {
    const conditions = names.filter(({ of }) => of === 'condition').map(({ name }) => name)
    for (const piece of [...draft.norms, ...draft.change]) {
      for (const [name, value] of Object.entries(piece.gathered)) {
        const at = draft.at(piece, 'gathered', name)
        const condition = draft.conditions.find((each) => each.name === name)
        if (!conditions.includes(name)) {
          yield {
            at,
            message: `There is no condition "${name}".`,
            mend: offer(name, conditions, 'conditions'),
          }
        } else if (condition && condition.setBy !== 'file' && value !== 'unknown') {
          const values = condition.options.map(({ id }) => id)
          if (values.includes(value)) continue
          yield {
            at,
            message: `The condition "${name}" never stands at "${value}".`,
            mend: offer(value, [...values, 'unknown'], 'values'),
          }
        }
      }
    }
  },
} satisfies Check
