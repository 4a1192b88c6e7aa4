import type { Check } from '../check.ts'
import { namesRead } from '../convert/link.ts'
import { isTrial, nodesOf } from '../structure.ts'

/**
 * What it does: What a rule, an `until` or a value reads has been given by then.
 *
 * Why it matters: A formula over what is still to come has no value: the rule does nothing, the value is
 * missing.
 *
 * Example:
 *     - { rule: slow, when: last(run.time) > 60, end: test }
 *     - { timed: run, … }
 *
 * Instead:
 *     - { timed: run, … }
 *     - { rule: slow, when: last(run.time) > 60, end: test }
 */
export default {
  code: 'reads_later',
  severity: 'warning',
  needs: ['steps'],
  *run({ draft }) {
    const placed = nodesOf(draft)
    const byTree = new Map(placed.map((each) => [draft.places.get(each.node), each]))
    const trials = new Map(
      placed.flatMap((each) =>
        each.node.node === 'step' && isTrial(each.node) ? [[each.node.name, each] as const] : [],
      ),
    )
    for (const expression of draft.expressions) {
      const owner = byTree.get(expression.owner)
      if (!owner) continue
      for (const name of namesRead(expression)) {
        const trial = trials.get(name)
        if (!trial || trial.order < owner.order) continue
        const again = [...owner.around, ...(owner.node.node === 'section' ? [owner.node] : [])]
        if (trial.around.some((section) => again.includes(section))) continue
        yield {
          at: expression.node.at,
          message: `The trial "${name}" only comes after this is worked out.`,
          mend: 'Move it behind that trial, or read an earlier one.',
        }
      }
    }
  },
} satisfies Check
