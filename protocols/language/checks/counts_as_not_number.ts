import type { Check } from '../check.ts'
import { STEP_KINDS } from '../schema/kinds.ts'
import { stepsOf } from '../structure.ts'

/**
 * What it does: What an outcome counts as stands only at a trial that gives a number.
 *
 * Why it matters: A number can't stand in for an answer in words.
 *
 * Example:
 *     - { ask: felt, text: One or two?, options: { one: One, two: Two }, counts-as: { refused: 0 } }
 *
 * Instead:
 *     - { ask: felt, text: One or two?, options: { one: One, two: Two } }
 */
export default {
  code: 'counts_as_not_number',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { node } of stepsOf(draft)) {
      const first = Object.values(STEP_KINDS.get(node.kind)?.columns(node) ?? {})[0]
      if (first === undefined || first.is === 'number' || !draft.node(node, 'counts-as')) continue
      yield {
        at: draft.at(node, 'counts-as'),
        message: `"${node.name}" gives no number, so no outcome can count as one.`,
        mend: 'Take counts-as away.',
      }
    }
  },
} satisfies Check
