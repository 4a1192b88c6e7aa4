import type { Check } from '../check.ts'
import { offer } from '../schema/suggest.ts'
import { sectionsOf } from '../structure.ts'

/**
 * What it does: A section goes through a list that exists: `hands`, or one under `lists`.
 *
 * Why it matters: Without the list there is nothing to go through.
 *
 * Example:
 *     - for-each: task
 *       in: taks
 *
 * Instead:
 *     - for-each: task
 *       in: tasks
 */
export default {
  code: 'list_unknown',
  severity: 'error',
  needs: ['lists', 'raters'],
  *run({ draft, names }) {
    const raters = draft.raters === null ? [] : ['raters']
    const known = ['hands', ...raters, ...names.filter(({ of }) => of === 'list').map(({ name }) => name)]
    for (const { node } of sectionsOf(draft)) {
      for (const key of ['in', 'over']) {
        const list = node.fields[key]
        if (typeof list !== 'string' || known.includes(list)) continue
        yield {
          at: draft.at(node, key),
          message: `There is no list "${list}".`,
          mend:
            list === 'raters'
              ? 'Say who rates at the top of the file: raters: { count: 2 }.'
              : offer(list, known, 'lists'),
        }
      }
    }
  },
} satisfies Check
