import type { Check } from '../check.ts'

/**
 * What it does: A column of a norm table that is named as a section is of a loop that the score is
 * worked out for.
 *
 * Why it matters: A score of all passes together has no one pass by which to choose the row.
 *
 * Example:
 *     scores: [{ score: total, value: … }]   # with a column task in the table
 *
 * Instead:
 *     scores: [{ score: total, each: task, value: … }]
 */
export default {
  code: 'norm_column_not_around',
  severity: 'error',
  needs: ['steps', 'scores'],
  *run({ draft }) {
    for (const norm of draft.norms) {
      const score = draft.scores.find(({ name }) => name === norm.of)
      for (const { column, by, at } of draft.normTable(norm).columns) {
        if (by !== 'loop' || !score || score.each.includes(column)) continue
        yield {
          at,
          message: `The column "${column}" chooses by a loop, and "${score.name}" is not worked out for each ${column}.`,
          mend: `Add each: ${column} to the score, or take the column away.`,
        }
      }
    }
  },
} satisfies Check
