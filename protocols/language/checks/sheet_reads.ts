import type { Check } from '../check.ts'
import type { Draft } from '../convert/draft.ts'
import { namesRead } from '../convert/link.ts'
import type { Node } from '../model.ts'
import { SECTION_KINDS } from '../schema/kinds.ts'
import { isSheet } from '../sheet.ts'
import { isTrial, nodesOf } from '../structure.ts'

/** What can't stand on a sheet at all is told for that alone. */
const isForSheets = (node: Node, { draws }: Draft): boolean =>
  node.node === 'step' ||
  (node.node === 'section' && (SECTION_KINDS.get(node.kind)?.onSheet?.(node, draws) ?? null) !== null)

/**
 * What it does: Nothing on a sheet hangs on another cell of it or on a score, and which cells there are hangs on no
 * trial at all.
 *
 * Why it matters: A page is filled in in any order, and two orders have to come to the same. A page whose cells hung on
 * trials would have to change when one of those is put right.
 *
 * Example:
 *     - { for-each: joint, in: joints, where: last(pain.answer) == 'no', sheet: true, … }
 *
 * Instead:
 *     - { choose: if_none, cases: [{ when: last(pain.answer) == 'no', steps: [{ for-each: joint, in: joints, sheet: true, … }] }] }
 */
export default {
  code: 'sheet_reads',
  severity: 'error',
  needs: ['steps', 'scores'],
  *run({ draft, names }) {
    const placed = nodesOf(draft)
    const byTree = new Map(placed.map((each) => [draft.places.get(each.node), each]))
    const scores = new Set(names.filter(({ of }) => of === 'score').map(({ name }) => name))
    const trials = new Map(
      placed.flatMap((each) =>
        each.node.node === 'step' && isTrial(each.node) ? [[each.node.name, each] as const] : [],
      ),
    )
    for (const expression of draft.expressions) {
      const owner = byTree.get(expression.owner)
      if (owner === undefined || !isForSheets(owner.node, draft)) continue
      const own = owner.node.node === 'section' ? [...owner.around, owner.node] : owner.around
      const sheet = own.find(isSheet)
      if (sheet === undefined) continue
      for (const name of namesRead(expression)) {
        const trial = trials.get(name)
        const isOnSheet = trial?.around.includes(sheet) ?? false
        const isTold = scores.has(name) || isOnSheet || (trial !== undefined && owner.node.node === 'section')
        if (!isTold) continue
        yield {
          at: expression.node.at,
          message: `The sheet "${sheet.name}" can’t hang on "${name}".`,
          mend:
            owner.node.node === 'section'
              ? 'Put the sheet into a choose section that judges it before the sheet begins.'
              : 'Read what was given before the sheet began.',
        }
      }
    }
  },
} satisfies Check
