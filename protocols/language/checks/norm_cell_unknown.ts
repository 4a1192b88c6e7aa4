import type { Check } from '../check.ts'
import { recordable } from '../norms/recordable.ts'
import { offer } from '../schema/suggest.ts'

/**
 * What it does: A cell under a column that chooses the row holds something that can be recorded there:
 * an item of the list, an option or value of the condition, an option of the step, a number or a range such as 0..8.
 *
 * Why it matters: A row with a misspelt word fits nobody, and nobody would notice.
 *
 * Example:
 *     build … ook   # the condition has the options oak and cork
 *
 * Instead:
 *     build … oak
 */
export default {
  code: 'norm_cell_unknown',
  severity: 'error',
  needs: ['steps', 'lists', 'conditions'],
  *run({ draft }) {
    for (const norm of draft.norms) {
      const { columns, rows } = draft.normTable(norm)
      for (const chooser of columns) {
        const words = recordable(draft, chooser)
        if (words === null) continue
        for (const { row, at, cells } of rows) {
          const cell = row.chosenBy[chooser.column]
          if (cell?.is !== 'word' || words.includes(cell.word)) continue
          yield {
            at: cells[chooser.column] ?? at,
            message: `"${cell.word}" is never recorded under "${chooser.column}".`,
            mend:
              words.length === 0
                ? 'Write a number, or a range such as 0..8 or 13..; both ends belong to it.'
                : offer(cell.word, words, 'words'),
          }
        }
      }
    }
  },
} satisfies Check
