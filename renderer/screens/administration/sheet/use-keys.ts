/** The keys of a page: Enter goes on, arrows move, a letter is a command as anywhere else. */
import { type KeyboardEvent, useEffect, useRef } from 'react'
import type { SheetCell, SheetView } from '../../../../protocols/runner/view.ts'
import { type Command, commandOf } from '../../../input/keys.ts'
import { cellFaceOf } from '../../../steps/registry.ts'
import { cellBeside, cellId, type Grid } from './grid.ts'
import type { Typing } from './use-typing.ts'

const ARROWS: Readonly<Record<string, readonly [down: number, right: number]>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
}

/** Sideways an arrow moves within what is typed first. */
function isAtEdge({ selectionStart, selectionEnd, value }: HTMLInputElement, key: string): boolean {
  const isWhole = selectionStart === 0 && selectionEnd === value.length
  if (key === 'ArrowLeft') return isWhole || selectionEnd === 0
  return key !== 'ArrowRight' || isWhole || selectionStart === value.length
}

interface Keys {
  readonly hold: (cell: SheetCell) => (box: HTMLInputElement | null) => void
  readonly onKey: (cell: SheetCell, event: KeyboardEvent<HTMLInputElement>) => void
}

export function useKeys(
  { sheet, grid, typing }: { readonly sheet: SheetView; readonly grid: Grid; readonly typing: Typing },
  onCommand: (command: Command) => void,
): Keys {
  const boxes = useRef(new Map<string, HTMLInputElement>())
  const focus = (cell: SheetCell | undefined): void => {
    // Where no cell is open any more, the next thing to press is to leave the page.
    if (cell === undefined) document.querySelector<HTMLElement>('.main-action')?.focus()
    else boxes.current.get(cellId(cell))?.focus()
  }
  // The page is there to be typed in: typing begins in its first open cell.
  const first = sheet.cells.find(({ trial }) => trial === null)
  const start = useRef(first === undefined ? '' : cellId(first))
  useEffect(() => boxes.current.get(start.current)?.focus({ preventScroll: true }), [])
  /** The next open cell, round to the first; one that is being saved is open no more. */
  const goOn = (from: SheetCell): void => {
    const { cells } = sheet
    const at = cells.findIndex((cell) => cellId(cell) === cellId(from))
    const round = [...cells.slice(at + 1), ...cells.slice(0, at)]
    focus(round.find((cell) => cell.trial === null && typing.draft(cell)?.isSaving !== true))
  }
  const onKey: Keys['onKey'] = (cell, event) => {
    if (event.ctrlKey || event.altKey || event.metaKey || event.nativeEvent.isComposing) return
    const arrow = ARROWS[event.key]
    if (event.key === 'Enter') {
      event.preventDefault()
      if (!event.repeat && typing.enter(cell)) goOn(cell)
    } else if (arrow !== undefined && isAtEdge(event.currentTarget, event.key)) {
      event.preventDefault()
      const next = cellBeside(grid, cell, ...arrow)
      if (next !== null) focus(next)
    } else if (event.key.length === 1 && cellFaceOf(cell.kind)?.hasLetters(cell.face) !== true) {
      const command = commandOf(event.key, {})
      if (command === null) return
      event.preventDefault()
      if (!event.repeat) onCommand(command)
    }
  }
  const hold: Keys['hold'] = (cell) => (box) => {
    if (box === null) boxes.current.delete(cellId(cell))
    else boxes.current.set(cellId(cell), box)
  }
  return { hold, onKey }
}
