import type { Check } from '../check.ts'
import { stepsOf } from '../structure.ts'

/**
 * What it does: The grades that are allowed at a step are grades of its scale.
 *
 * Why it matters: A grade without words could never be given, and the one that was meant can't be either.
 *
 * Example:
 *     - { rated: reflex, scale: { 0: None, 1: Part, 2: Full }, allow: [0, 3] }
 *
 * Instead:
 *     - { rated: reflex, scale: { 0: None, 1: Part, 2: Full }, allow: [0, 2] }
 */
export default {
  code: 'allow_not_in_scale',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { node } of stepsOf(draft)) {
      const { allow, scale } = node.fields
      if (!Array.isArray(allow) || typeof scale !== 'object' || scale === null) continue
      const grades = Object.keys(scale)
      for (const [index, grade] of allow.entries()) {
        if (grades.includes(String(grade))) continue
        yield {
          at: draft.at(node, 'allow', index),
          message: `${grade} is no grade of this scale.`,
          mend: `Its grades are ${grades.join(', ')}: name one of them, or add ${grade} to the scale.`,
        }
      }
    }
  },
} satisfies Check
