import { useState } from 'react'
import type { EventBody } from '../../../../protocols/runner/events.ts'
import type { AdministrationView, SheetCell, SheetView } from '../../../../protocols/runner/view.ts'
import type { Command } from '../../../input/keys.ts'
import { cellFaceOf } from '../../../steps/registry.ts'
import { say } from '../../../words/index.ts'
import { Figure } from '../figure.tsx'
import { Cell } from './cell.tsx'
import { cellId, type Grid, gridOf, openIn, tellCell } from './grid.ts'
import { useKeys } from './use-keys.ts'
import { useTyping } from './use-typing.ts'
import './sheet.css'

export interface SheetProps {
  readonly view: AdministrationView
  readonly sheet: SheetView
  /** Sends an event; null once it was taken, else why not, in words. */
  readonly onAct: (body: EventBody) => Promise<string | null>
  readonly onCommand: (command: Command) => void
  /** The cell that is typed in by now: what a command is about. */
  readonly onCell: (cell: SheetCell) => void
}

/** Where a row has no such cell. */
const NOTHING = '–'

/** What the cell at hand asks for: its words, what may be typed, its figure. */
function Instructions({ grid, cell }: { readonly grid: Grid; readonly cell: SheetCell | null }) {
  if (cell === null) return <p className="step-aside">{say('sheet.none_chosen')}</p>
  return (
    <section className="giving-part">
      <h2 className="giving-kind">{tellCell(grid, cell)}</h2>
      {cell.text === null ? null : <p className="sheet-text">{cell.text}</p>}
      <p className="step-aside">{cellFaceOf(cell.kind)?.hint(cell.face)}</p>
      {cell.inTurn ? null : <p className="step-aside">{say('sheet.not_in_turn')}</p>}
      <Figure figure={cell.figure} />
    </section>
  )
}

function Columns({ grid }: { readonly grid: Grid }) {
  return (
    <thead>
      <tr>
        <th scope="col">{say('sheet.corner')}</th>
        {grid.columns.map(({ id, title }, index) => (
          <th key={id} scope="col" id={`sheet-column-${index}`}>
            {title}
          </th>
        ))}
      </tr>
    </thead>
  )
}

/** A section on one page, filled in by a run of values: type one, Enter goes on to the next. */
export function Sheet({ view, sheet, onAct, onCommand, onCell }: SheetProps) {
  const grid = gridOf(sheet)
  const typing = useTyping(onAct)
  const [at, setAt] = useState<string | null>(null)
  const { hold, onKey } = useKeys({ sheet, grid, typing }, onCommand)
  const here = sheet.cells.find((cell) => cellId(cell) === at) ?? null
  const all = sheet.cells.length
  const cellAt = (y: number, x: number) => {
    const cell = grid.at(grid.rows[y]?.id ?? '', grid.columns[x]?.id ?? '')
    const key = grid.columns[x]?.id
    if (cell === null) return <td key={key}>{NOTHING}</td>
    return (
      <Cell
        key={key}
        cell={cell}
        trial={view.trials.find(({ id }) => id === cell.trial) ?? null}
        draft={typing.draft(cell)}
        labelledBy={`sheet-row-${y} sheet-column-${x}`}
        hold={hold(cell)}
        onFocus={() => {
          setAt(cellId(cell))
          onCell(cell)
        }}
        onType={(typed) => typing.type(cell, typed)}
        onLeave={() => typing.enter(cell)}
        onKey={(event) => onKey(cell, event)}
      />
    )
  }
  return (
    <div className="giving-columns">
      <div className="giving-step">
        <p className="sheet-given numbers">
          {say('sheet.given', { given: all - openIn(sheet).length, all })}
        </p>
        <table className="table sheet-table">
          <caption className="unseen">{say('sheet.caption')}</caption>
          <Columns grid={grid} />
          <tbody>
            {grid.rows.map((row, y) => (
              <tr key={row.id}>
                <th scope="row" id={`sheet-row-${y}`}>
                  {row.title}
                </th>
                {grid.columns.map((_column, x) => cellAt(y, x))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <div className="giving-side sheet-side">
        <Instructions grid={grid} cell={here} />
        <output className="step-entry-problem">{here === null ? null : typing.draft(here)?.problem}</output>
        <p className="sheet-help">{say('sheet.help')}</p>
      </div>
    </div>
  )
}
