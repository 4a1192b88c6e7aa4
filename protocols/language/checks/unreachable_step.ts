import type { Check } from '../check.ts'
import type { ChooseFields } from '../../sections/choose/keys.ts'
import type { Node, Section } from '../model.ts'

interface Unreached {
  readonly node: Node
  /** What stands before it and always holds. */
  readonly before: string
}

const alwaysHolds = ({ source }: { readonly source: string }): boolean => source.trim() === 'true'

/** The first steps of the cases behind one that always holds. */
function unchosen({ fields, steps }: Section): readonly Unreached[] {
  const { cases = [] } = fields as Partial<ChooseFields>
  const always = cases.find(({ when }) => alwaysHolds(when))
  const from = steps.findIndex(({ name }) => name === always?.name)
  const later = always === undefined ? [] : steps.slice(from + 1)
  return later.flatMap((part) =>
    part.node === 'section' && part.steps[0]
      ? [{ node: part.steps[0], before: 'a case before it always holds' }]
      : [],
  )
}

/** Steps behind a rule that always ends something around them, once for each such rule. */
function unreached(nodes: readonly Node[]): readonly Unreached[] {
  const found: Unreached[] = []
  for (const [index, node] of nodes.entries()) {
    if (node.node === 'section') found.push(...unchosen(node), ...unreached(node.steps))
    const next = nodes[index + 1]
    if (node.node !== 'rule' || node.end === null || !alwaysHolds(node.when) || !next) continue
    found.push({ node: next, before: `the rule "${node.name}" before it always ends what is around` })
    break
  }
  return found
}

/**
 * What it does: Every step can be reached: none stands behind a rule that always ends the section around
 * it, or behind a case that always holds.
 *
 * Why it matters: A step that is never given leaves its scores without a value for every client.
 *
 * Example:
 *     - { rule: done, when: true, end: hand }
 *     - { timed: run, … }
 *
 * Instead:
 *     - { timed: run, … }
 *     - { rule: done, when: "last(run.time) > 60", end: hand }
 */
export default {
  code: 'unreachable_step',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { node, before } of unreached(draft.steps)) {
      yield {
        at: draft.nameAt(node),
        message: `"${node.name}" is never reached: ${before}.`,
        mend: 'Give that a condition that can be false, or move it behind the steps.',
      }
    }
  },
} satisfies Check
