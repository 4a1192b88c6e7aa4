/** The cells of a page as rows and columns: a row for each pass of the page, or for each step where it has none. */
import type { SheetCell, SheetView } from '../../../../protocols/runner/view.ts'
import { tellPasses } from '../../../steps/place-words.ts'
import { say } from '../../../words/index.ts'

interface Head {
  readonly id: string
  readonly title: string
}

export interface Grid {
  readonly rows: readonly Head[]
  readonly columns: readonly Head[]
  at(row: string, column: string): SheetCell | null
  /** Where a cell stands. */
  of(cell: SheetCell): { readonly row: Head; readonly column: Head }
}

export const cellId = ({ step, place }: Pick<SheetCell, 'step' | 'place'>): string =>
  JSON.stringify([step, place])

/** A name of the file as words: `active_bend` as `Active bend`. */
function words(name: string): string {
  const spaced = name.replaceAll('_', ' ')
  return spaced.charAt(0).toUpperCase() + spaced.slice(1)
}

interface Placed {
  readonly cell: SheetCell
  readonly row: Head
  readonly column: Head
}

function placed(cell: SheetCell, isOneStep: boolean): Placed {
  const [own, ...inner] = cell.passes
  if (own === undefined) {
    return {
      cell,
      row: { id: cell.step, title: words(cell.step) },
      column: { id: '', title: say('sheet.value') },
    }
  }
  const told = [isOneStep ? null : words(cell.step), tellPasses(inner) || null].filter(
    (each) => each !== null,
  )
  return {
    cell,
    row: { id: JSON.stringify([own.loop, own.id, own.number]), title: words(tellPasses([own]) || own.loop) },
    column: {
      id: JSON.stringify([cell.step, inner.map(({ id, number }) => id ?? number)]),
      title: told.join(' · ') || say('sheet.value'),
    },
  }
}

const distinct = (heads: readonly Head[]): readonly Head[] => [
  ...new Map(heads.map((head) => [head.id, head])).values(),
]

export function gridOf({ cells }: SheetView): Grid {
  const isOneStep = new Set(cells.map(({ step }) => step)).size === 1
  const all = cells.map((cell) => placed(cell, isOneStep))
  const found = new Map(all.map((each) => [`${each.row.id} ${each.column.id}`, each.cell]))
  const heads = new Map(all.map((each) => [cellId(each.cell), each]))
  const none: Head = { id: '', title: '' }
  return {
    rows: distinct(all.map(({ row }) => row)),
    columns: distinct(all.map(({ column }) => column)),
    at: (row, column) => found.get(`${row} ${column}`) ?? null,
    of: (cell) => heads.get(cellId(cell)) ?? { row: none, column: none },
  }
}

export const openIn = ({ cells }: SheetView): readonly SheetCell[] =>
  cells.filter(({ trial }) => trial === null)

/** A cell in words: `Wrist bend, Right hand`. */
export function tellCell(grid: Grid, cell: SheetCell): string {
  const { row, column } = grid.of(cell)
  return grid.columns.length === 1 ? row.title : say('sheet.cell', { row: row.title, column: column.title })
}

/** The next cell that there is, from a cell so many rows down and columns to the right. */
export function cellBeside(grid: Grid, cell: SheetCell, down: number, right: number): SheetCell | null {
  const { row, column } = grid.of(cell)
  let y = grid.rows.findIndex(({ id }) => id === row.id) + down
  let x = grid.columns.findIndex(({ id }) => id === column.id) + right
  for (;;) {
    const [nextRow, nextColumn] = [grid.rows[y], grid.columns[x]]
    if (nextRow === undefined || nextColumn === undefined) return null
    const found = grid.at(nextRow.id, nextColumn.id)
    if (found !== null) return found
    y += down
    x += right
  }
}
