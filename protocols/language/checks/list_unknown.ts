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
  needs: ['lists'],
  *run({ draft, names }) {
    const known = ['hands', ...names.filter(({ of }) => of === 'list').map(({ name }) => name)]
    for (const { node } of sectionsOf(draft)) {
      const list = node.fields.in
      if (typeof list !== 'string' || known.includes(list)) continue
      yield {
        at: draft.at(node, 'in'),
        message: list === 'raters' ? 'The list "raters" is not read yet.' : `There is no list "${list}".`,
        mend: offer(list, known, 'lists'),
      }
    }
  },
} satisfies Check
