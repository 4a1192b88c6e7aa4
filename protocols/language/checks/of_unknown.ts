import type { Check } from '../check.ts'
import { namesOf } from '../convert/names.ts'
import { passesOf } from '../passes.ts'
import { offer } from '../schema/suggest.ts'
import { isTrial, nodesOf } from '../structure.ts'

/**
 * What it does: A further reading names, with `of`, an earlier trial of the same place, also where several rate it.
 *
 * Why it matters: It is void, repeated and undone with that trial; without one it belongs to nothing.
 *
 * Example:
 *     - { measured: pain, of: lift, unit: "{score}", range: [0, 10] }   # no step lift
 *
 * Instead:
 *     - { timed: lift, … }
 *     - { measured: pain, of: lift, unit: "{score}", range: [0, 10] }
 */
export default {
  code: 'of_unknown',
  severity: 'error',
  needs: [],
  *run({ draft, names }) {
    const placed = nodesOf(draft)
    const steps = namesOf(names, 'step')
    for (const { node, around, order } of placed) {
      if (node.node !== 'step' || node.of === null) continue
      const at = draft.at(node, 'of')
      const target = placed.find((each) => each.node.node === 'step' && each.node.name === node.of)
      if (!steps.includes(node.of)) {
        yield { at, message: `There is no step "${node.of}".`, mend: offer(node.of, steps, 'steps') }
      } else if (target?.node.node === 'step') {
        const beside =
          target.around.every((each, depth) => each === around[depth]) &&
          around
            .slice(target.around.length)
            .every((section) => passesOf(section, draft.draws)?.list === 'raters')
        if (!isTrial(target.node)) {
          yield { at, message: `"${node.of}" is no trial.`, mend: 'Name a step that measures something.' }
        } else if (target.order >= order || !beside) {
          yield {
            at,
            message: `"${node.of}" is not an earlier step beside this one.`,
            mend: `Put this step right after "${node.of}", in the same section.`,
          }
        }
      }
    }
  },
} satisfies Check
