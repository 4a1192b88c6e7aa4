import type { Check } from '../check.ts'
import { namesOf } from '../convert/names.ts'
import { offer } from '../schema/suggest.ts'
import { isTrial, nodesOf } from '../structure.ts'

/**
 * What it does: A rest that counts from a trial (`since`) names a trial that can come before it.
 *
 * Why it matters: A rest that waits for what is still to come would never end, or be no rest.
 *
 * Example:
 *     - { rest: breath, least: 15 s, since: squeeze }   # squeeze comes later, once
 *     - { measured: squeeze, … }
 *
 * Instead:
 *     - { measured: squeeze, … }
 *     - { rest: breath, least: 15 s, since: squeeze }
 */
export default {
  code: 'since_never_before',
  severity: 'error',
  needs: [],
  *run({ draft, names }) {
    const placed = nodesOf(draft)
    const steps = namesOf(names, 'step')
    for (const { node, around, order } of placed) {
      const { since } = node.node === 'step' ? node.fields : {}
      if (typeof since !== 'string') continue
      const at = draft.at(node, 'since')
      const target = placed.find((each) => each.node.node === 'step' && each.node.name === since)
      if (!steps.includes(since)) {
        yield { at, message: `There is no step "${since}".`, mend: offer(since, steps, 'steps') }
      } else if (target?.node.node === 'step') {
        if (!isTrial(target.node)) {
          yield {
            at,
            message: `"${since}" is no trial, so no rest can count from it.`,
            mend: 'Name a trial.',
          }
        } else if (target.order > order && !target.around.some((section) => around.includes(section))) {
          yield {
            at,
            message: `The trial "${since}" only comes after this rest.`,
            mend: 'Put the rest after it, or into the section that repeats both.',
          }
        }
      }
    }
  },
} satisfies Check
