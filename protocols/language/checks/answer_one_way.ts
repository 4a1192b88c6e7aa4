import type { Check } from '../check.ts'
import { STEP_KINDS } from '../schema/kinds.ts'
import { stepsOf } from '../structure.ts'

const WAYS = ['options', 'range', 'words'] as const

/**
 * What it does: A question is answered in exactly one way: by one of its `options`, by a number (`range`), or
 * in `words`.
 *
 * Why it matters: Without one nobody could answer; with two nobody could tell what a formula reads.
 *
 * Example:
 *     - { ask: felt, text: One or two?, options: { one: One, two: Two }, range: [1, 2] }
 *
 * Instead:
 *     - { ask: felt, text: One or two?, options: { one: One, two: Two } }
 */
export default {
  code: 'answer_one_way',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { node } of stepsOf(draft)) {
      const { shape } = STEP_KINDS.get(node.kind)?.keys ?? { shape: {} }
      if (!WAYS.every((way) => Object.hasOwn(shape, way))) continue
      const [first, second] = WAYS.filter((way) => node.fields[way] !== undefined)
      if (first === undefined) {
        yield {
          at: draft.headAt(node),
          message: `Nothing says how "${node.name}" is answered.`,
          mend: 'Add options, range (a number) or words (the longest answer in characters).',
        }
      } else if (second !== undefined) {
        yield {
          at: draft.at(node, second),
          message: `"${node.name}" is answered in two ways: "${first}" and "${second}".`,
          mend: 'Take one of them away, or ask twice.',
        }
      }
    }
  },
} satisfies Check
