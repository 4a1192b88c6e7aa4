import type { Check } from '../check.ts'
import type { Draft, PlacedExpression } from '../convert/draft.ts'
import { namesRead } from '../convert/link.ts'
import { nodesOf, stepsOf } from '../structure.ts'

/**
 * What it does: Where one may rate another day (`later: true`), nothing that decides what is given reads what those
 * who rate have given: no rule, no `until`, `where`, `when` or `accepted`, not by way of a score either.
 *
 * Why it matters: The grades may not be there yet, and the test would take another way depending on who rates when.
 *
 * Example:
 *     raters: { count: 2, later: true } … { rule: full, when: min(quality.grade) == 3, end: task }
 *
 * Instead:
 *     raters: { count: 2, later: true } … { rule: full, when: last(carry.time) < 2, end: task }
 */
export default {
  code: 'decides_by_later',
  severity: 'error',
  needs: ['steps', 'raters'],
  *run({ draft }) {
    if (draft.raters?.later !== true) return
    const rated = new Set(
      stepsOf(draft)
        .filter(({ around }) => around.some(({ fields }) => fields.in === 'raters'))
        .map(({ node }) => node.name),
    )
    const deciding = new Set(
      nodesOf(draft).flatMap(({ node }) => (node.node === 'step' ? [] : [draft.places.get(node)])),
    )
    for (const placed of draft.expressions) {
      if (!deciding.has(placed.owner)) continue
      const read = ratedRead(draft, placed, rated)
      if (read === null) continue
      yield {
        at: placed.node.at,
        message: `What "${read}" is rated may only be known another day, and this decides what is given.`,
        mend: 'Read something else here, or take later: true away.',
      }
    }
  },
} satisfies Check

/** The first rated step that an expression reads, also by way of scores; null: none. */
function ratedRead(draft: Draft, from: PlacedExpression, rated: ReadonlySet<string>): string | null {
  const seen = new Set<string>()
  const open = [...namesRead(from)]
  for (let name = open.pop(); name !== undefined; name = open.pop()) {
    if (rated.has(name)) return name
    if (seen.has(name)) continue
    seen.add(name)
    const score = draft.scores.find((each) => each.name === name)
    const formulas = draft.expressions.filter(({ hole }) => hole === score?.value || hole === score?.needs)
    open.push(...formulas.flatMap((each) => [...namesRead(each)]))
  }
  return null
}
