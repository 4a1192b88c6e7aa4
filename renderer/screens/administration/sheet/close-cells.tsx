import type { SheetCell, SheetView } from '../../../../protocols/runner/view.ts'
import { tellPass } from '../../../steps/place-words.ts'
import { say } from '../../../words/index.ts'
import { type Closable, CloseForm, type FormProps } from '../forms.tsx'
import { gridOf, openIn, tellCell } from './grid.ts'

/** So many open cells are named; the others are counted. */
const NAMED = 12

interface Props extends FormProps {
  readonly sheet: SheetView
  /** The cell that was typed in last; null where the whole page is asked about. */
  readonly cell: SheetCell | null
}

/** What may be closed: the cell at hand, the open ones of a pass around it, all that are open. */
function closable(sheet: SheetView, cell: SheetCell | null): readonly Closable[] {
  const count = openIn(sheet).length
  const rest = { what: sheet.section, label: say('sheet.rest', { count }), place: sheet.place }
  if (cell === null) return [rest]
  const own = { what: cell.step, label: tellCell(gridOf(sheet), cell), place: cell.place }
  // A pass of the page's own loop would share its name with the page.
  const passes = cell.passes
    .filter(({ loop }) => loop !== sheet.section)
    .map((pass): Closable => {
      const id = cell.place[pass.loop]
      return {
        what: pass.loop,
        label: say('sheet.rest_of', { pass: tellPass(pass) ?? pass.loop }),
        place: { ...sheet.place, ...(id !== undefined && { [pass.loop]: id }) },
      }
    })
  return count === 0 ? [own] : [own, ...passes, rest]
}

/** Asks why what is open can't be given: once for all of it, or for one cell. */
export function CloseCells({ sheet, cell, onAct, onClose }: Props) {
  const grid = gridOf(sheet)
  const blank = openIn(sheet).map((each) => tellCell(grid, each))
  const named = blank.slice(0, NAMED).join(' · ')
  const more = blank.length - NAMED
  return (
    <CloseForm onAct={onAct} onClose={onClose} closable={closable(sheet, cell)} place={sheet.place}>
      {blank.length === 0 ? null : (
        <p>
          {say('sheet.gaps.list', {
            cells: more > 0 ? say('sheet.gaps.more', { cells: named, count: more }) : named,
          })}
        </p>
      )}
    </CloseForm>
  )
}
