import type { Check } from '../check.ts'

/**
 * What it does: A change figure says in words whom it was gathered from.
 *
 * Why it matters: The error of a measurement differs between groups; a figure for healthy adults says
 * little about a painful hand.
 *
 * Example:
 *     change: [{ of: time, mdc95: 3.3 s, source: … }]
 *
 * Instead:
 *     change: [{ of: time, mdc95: 3.3 s, population: "Stroke, more affected hand", source: … }]
 */
export default {
  code: 'change_population_missing',
  severity: 'advice',
  needs: [],
  *run({ draft }) {
    for (const figure of draft.change) {
      if (draft.node(figure, 'population')) continue
      yield {
        at: draft.headAt(figure),
        message: 'The figure does not say whom it was gathered from.',
        mend: 'Add population with a few words.',
      }
    }
  },
} satisfies Check
