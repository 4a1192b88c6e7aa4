import type { Check } from '../check.ts'
import { NAME } from '../schema/shapes.ts'
import { offer } from '../schema/suggest.ts'
import { rulesOf } from '../structure.ts'

/**
 * What it does: A rule ends a section that is around it, or `test`.
 *
 * Why it matters: What isn't running can't be ended.
 *
 * Example:
 *     - { rule: stop, when: "last(run.time) > 60", end: part }   # no section part around it
 *
 * Instead:
 *     - { rule: stop, when: "last(run.time) > 60", end: test }
 */
export default {
  code: 'end_not_around',
  severity: 'error',
  needs: [],
  *run({ draft, names }) {
    for (const { node, around } of rulesOf(draft)) {
      if (node.end === null || node.end === 'test' || around.some(({ name }) => name === node.end)) continue
      const named = around.map(({ name }) => name).filter((name) => NAME.test(name))
      const can = [...named, 'test']
      const exists = names.some(({ of, name }) => of === 'section' && name === node.end)
      yield {
        at: draft.at(node, 'end'),
        message: exists
          ? `The section "${node.end}" is not around this rule.`
          : `There is no section "${node.end}".`,
        mend: offer(node.end, can, 'sections'),
      }
    }
  },
} satisfies Check
