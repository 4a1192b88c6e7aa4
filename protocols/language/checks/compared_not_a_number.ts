import type { Check } from '../check.ts'

/**
 * What it does: Norms and change figures are of scores that are numbers.
 *
 * Why it matters: A yes or no has no mean, and no error of measurement.
 *
 * Example:
 *     scores: [{ score: steady, value: count(run.time) > 2 }]
 *     norms: [{ norm: adults, of: steady, … }]
 *
 * Instead:
 *     norms: [{ norm: adults, of: time, … }]
 */
export default {
  code: 'compared_not_a_number',
  severity: 'error',
  needs: ['scores'],
  *run({ draft }) {
    for (const piece of [...draft.norms, ...draft.change]) {
      const score = draft.scores.find(({ name }) => name === piece.of)
      if (score?.value.type.is !== 'bool') continue
      yield {
        at: draft.at(piece, 'of'),
        message: `"${score.name}" is a yes or no, which can't be compared.`,
        mend: 'Name a score that is a number.',
      }
    }
  },
} satisfies Check
