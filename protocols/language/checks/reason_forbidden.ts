import type { Check } from '../check.ts'
import { childOf } from '../reader/tree.ts'

/**
 * What it does: A void reason that the protocol forbids isn't worded in it all the same.
 *
 * Why it matters: The examiner is offered it, although the file says that it must not make a trial void.
 *
 * Example:
 *     forbids: [interruption]
 *     happenings: { interruption: { seen: Somebody came in., then: void } }
 *
 * Instead:
 *     forbids: [interruption]
 */
export default {
  code: 'reason_forbidden',
  severity: 'warning',
  needs: ['happenings'],
  *run({ draft }) {
    const list = childOf(draft.tree, 'forbids')
    for (const item of list?.is === 'list' ? list.items : []) {
      if (item.is !== 'scalar') continue
      const worded = draft.happenings.find(
        (happening) => happening.name === item.written && draft.places.has(happening),
      )
      if (!worded) continue
      yield {
        at: item.at,
        message: `"${item.written}" is forbidden here, and stands among the happenings.`,
        mend: 'Take it away in one of the two places.',
      }
    }
  },
} satisfies Check
