/** The page at hand as a screen may know it: its cells in the order of the protocol, with what stands in them. */
import type { Section, Text } from '../language/model.ts'
import { isSheet } from '../language/sheet.ts'
import { attemptsAt, type Cell, cellsOf, outOfTurn, rowOf, type Sheet } from './cells.ts'
import type { Ground } from './due.ts'
import type { Place } from './events.ts'
import { atCell } from './playing.ts'
import { showFigure } from './showing-figure.ts'
import type { State } from './state.ts'
import { stepKind } from './step-ground.ts'
import { stepMoment } from './step-moment.ts'
import { spotOf } from './tree.ts'
import type { Pass, SheetCell, SheetView } from './view.ts'

interface Telling {
  say(text: Text, place: Place): string
  passesIn(place: Place, around: readonly Section[]): Pass[]
}

/** The page that the chart stands on; null elsewhere, also while the page waits for an order. */
export function sheetAt(ground: Ground, state: State): Sheet | null {
  const { node } = ground.tree.spots.get(state.at) ?? {}
  return node?.node === 'section' && isSheet(node) ? { ...ground, section: node } : null
}

export function showSheet(ground: Ground, state: State, phase: string, telling: Telling): SheetView | null {
  const sheet = ['finished', 'withdrawn'].includes(phase) ? null : sheetAt(ground, state)
  if (sheet === null) return null
  const { section } = sheet
  const { around } = spotOf(ground.tree, section.name)
  return {
    section: section.name,
    place: state.place,
    passes: telling.passesIn(state.place, around),
    cells: cellsOf(sheet, state).map((cell) => showCell(sheet, state, cell, telling)),
  }
}

function showCell(sheet: Sheet, state: State, cell: Cell, telling: Telling): SheetCell {
  const { step, place } = cell
  const { around } = spotOf(sheet.tree, step.name)
  const outer = spotOf(sheet.tree, sheet.section.name).around.length
  const kind = stepKind(step)
  const row = rowOf(state, cell)
  const here = { ...atCell(state, cell, attemptsAt(state, step, place)), flight: row }
  return {
    step: step.name,
    kind: step.kind,
    place,
    passes: telling.passesIn(place, around.slice(outer)),
    text: step.text && telling.say(step.text, place),
    figure: showFigure(sheet, step, place),
    gives: kind.onSheet?.(step)?.gives ?? '',
    face: { ...kind.face(stepMoment({ ...sheet, step }, here, kind.chart.initial)) },
    trial: row?.id ?? null,
    inTurn: outOfTurn(sheet, state, cell) === null,
  }
}

/** How many cells of the page at hand have a row. */
export function givenOnSheet(ground: Ground, state: State): number {
  const sheet = sheetAt(ground, state)
  return sheet === null ? 0 : cellsOf(sheet, state).filter((cell) => rowOf(state, cell) !== null).length
}
