import type { Check } from '../check.ts'
import { namesOf } from '../convert/names.ts'
import { offer } from '../schema/suggest.ts'
import { isTrial, rulesOf, stepsOf } from '../structure.ts'

/**
 * What it does: What a rule credits are trials inside the section that it ends.
 *
 * Why it matters: A credit stands for a trial that was cut off; one that isn't cut off has a reading of
 * its own.
 *
 * Example:
 *     - { rule: full, when: "min(quality.value) == 3", end: task, credit: { qualty: 3 } }
 *
 * Instead:
 *     - { rule: full, when: "min(quality.value) == 3", end: task, credit: { quality: 3 } }
 */
export default {
  code: 'credit_unknown',
  severity: 'error',
  needs: [],
  *run({ draft, names }) {
    const steps = stepsOf(draft)
    const declared = namesOf(names, 'step')
    for (const { node, around } of rulesOf(draft)) {
      const ended = around.find(({ name }) => name === node.end) ?? null
      for (const name of Object.keys(node.credit)) {
        const at = draft.at(node, 'credit', name)
        const step = steps.find((each) => each.node.name === name)
        if (!declared.includes(name)) {
          yield { at, message: `There is no step "${name}".`, mend: offer(name, declared, 'steps') }
        } else if (step && !isTrial(step.node)) {
          yield { at, message: `"${name}" is no trial, so it can't be credited.`, mend: 'Name a trial.' }
        } else if (step && ended && !step.around.includes(ended)) {
          yield {
            at,
            message: `"${name}" stands outside of "${ended.name}", which this rule ends.`,
            mend: 'Credit trials inside the section, or end a section that is around both.',
          }
        }
      }
    }
  },
} satisfies Check
