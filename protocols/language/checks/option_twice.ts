import type { Check } from '../check.ts'

/**
 * What it does: A condition names each of its values once.
 *
 * Why it matters: Of two alike nobody can tell which was recorded.
 *
 * Example:
 *     runs: { set-by: clinic, values: [1, 2, 2] }
 *
 * Instead:
 *     runs: { set-by: clinic, values: [1, 2, 3] }
 */
export default {
  code: 'option_twice',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const condition of draft.conditions) {
      const values = condition.options.map(({ id }) => id)
      for (const [index, id] of values.entries()) {
        if (values.indexOf(id) === index) continue
        yield {
          at: draft.at(condition, 'values', index),
          message: `"${id}" stands here twice.`,
          mend: 'Take one away.',
        }
      }
    }
  },
} satisfies Check
