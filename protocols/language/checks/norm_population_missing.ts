import type { Check } from '../check.ts'

/**
 * What it does: A norm says in words whom it was gathered from.
 *
 * Why it matters: A reader judges by it whether the client resembles them.
 *
 * Example:
 *     norms: [{ norm: adults, of: time, … }]
 *
 * Instead:
 *     norms: [{ norm: adults, of: time, …, population: "628 adults, United States" }]
 */
export default {
  code: 'norm_population_missing',
  severity: 'advice',
  needs: [],
  *run({ draft }) {
    for (const norm of draft.norms) {
      if (draft.node(norm, 'population')) continue
      yield {
        at: draft.nameAt(norm),
        message: `The norm "${norm.name}" does not say whom it was gathered from.`,
        mend: 'Add population with a few words.',
      }
    }
  },
} satisfies Check
