/** The cells of a sheet: one for each trial that is due on the page, given in whatever order. */
import type { Section, Step } from '../language/model.ts'
import { sectionsOnSheet, stepsOnSheet } from '../language/sheet.ts'
import { type Due, dueIn, type Ground, loopOf, placeAround, sectionKind } from './due.ts'
import type { EventBody, Place } from './events.ts'
import { listOf, newest } from './grown.ts'
import { isPartOf, samePlace } from './places.ts'
import { refuse } from './refuse.ts'
import type { State } from './state.ts'
import type { Refusal, Trial } from './view.ts'

export interface Sheet extends Ground {
  readonly section: Section
}

export type Cell = Due

/** All cells of a page as it stands, in the order of the protocol. */
export const cellsOf = ({ section, ...ground }: Sheet, state: State): readonly Cell[] =>
  dueIn(ground, state, section)

/** The row that stands for a cell; null while it is open. */
export const rowOf = (state: State, { step, place }: Pick<Cell, 'step' | 'place'>): Trial | null =>
  newest(
    state.trials,
    (trial) => trial.status === 'standing' && trial.step === step.name && samePlace(trial.place, place),
  )

export const openCells = (sheet: Sheet, state: State): readonly Cell[] =>
  cellsOf(sheet, state).filter((cell) => rowOf(state, cell) === null)

/** The cell that an event names by its step and place. */
export function cellIn(sheet: Sheet, state: State, body: EventBody): Cell | Refusal {
  const { step, place } = body as { readonly step?: string; readonly place?: Place }
  return cellAt(sheet, state, step ?? '', place ?? {})
}

export function cellAt(sheet: Sheet, state: State, step: string, place: Place): Cell | Refusal {
  const ofStep = cellsOf(sheet, state).filter((cell) => cell.step.name === step)
  if (ofStep.length === 0) return refuse('wrong_step', { step, at: sheet.section.name })
  return ofStep.find((cell) => samePlace(cell.place, place)) ?? refuse('wrong_place', { step })
}

/** What can be closed together: the whole page, or a pass of a loop on it. */
export const isClosable = ({ section }: Sheet, what: string): boolean =>
  sectionsOnSheet(section).some(({ name }) => name === what)

/** The open cells within a place, such as those of one hand. */
export const openWithin = (sheet: Sheet, state: State, place: Place): readonly Cell[] =>
  openCells(sheet, state).filter((cell) => isPartOf(place, cell.place))

/** True where the passes of a page come as they were ordered or drawn; else any cell may be given. */
const isInOrder = ({ section, protocol }: Sheet): boolean =>
  sectionKind(section).onSheet?.(section, protocol.draws) === 'ordered'

/** Why a cell is not yet to be given: an earlier pass of a page whose order is fixed has open cells. */
export function outOfTurn(sheet: Sheet, state: State, cell: Cell): Refusal | null {
  if (!isInOrder(sheet)) return null
  const [first] = openCells(sheet, state)
  if (first === undefined || rowOf(state, cell) !== null) return null
  const { loop } = loopOf(sheet, sheet.section)
  const [pass, due] = [passIn(sheet, cell.place), passIn(sheet, first.place)]
  return samePlace(pass, due) ? null : refuse('out_of_turn', { due: String(first.place[loop] ?? '') })
}

/** The part of a place that a pass of the page adds. */
function passIn({ tree, section }: Sheet, place: Place): Place {
  const keys = tree.keys.get(section.name) ?? []
  return Object.fromEntries(
    keys.flatMap((key) => (place[key] === undefined ? [] : [[key, place[key]] as const])),
  )
}

/**
 * The trials with those of the page in the order of the protocol, void ones before what stands in their cell: what a
 * formula says of the first or the last doesn't hang on the order in which the page was filled in.
 */
export function inPageOrder(sheet: Sheet, state: State): State['trials'] {
  const around = placeAround(sheet.tree, sheet.section.name, state.place)
  const names = new Set(stepsOnSheet(sheet.section).map(({ name }) => name))
  const all = listOf(state.trials)
  const cells = cellsOf(sheet, state)
  const rank = (trial: Trial): number =>
    cells.findIndex(({ step, place }) => step.name === trial.step && samePlace(place, trial.place))
  const spots = [...all.entries()].filter(
    ([, trial]) => names.has(trial.step) && isPartOf(around, trial.place) && trial.void?.cause !== 'taken_up',
  )
  const sorted = spots
    .map(([, trial]) => ({ trial, rank: rank(trial), stands: Number(trial.status === 'standing') }))
    .sort((one, other) => one.rank - other.rank || one.stands - other.stands)
  const items = [...all]
  for (const [n, [index]] of spots.entries()) items[index] = sorted[n]?.trial ?? (all[index] as Trial)
  return { items, length: items.length }
}

/** The order of a page is recorded where its kind asks for one, such as that of the hands. */
export const takesOrder = ({ section, protocol }: Sheet): boolean =>
  sectionKind(section).chart?.ordered(section, protocol.draws) ?? false

/** How often a trial was given in a cell and is void. */
export const attemptsAt = (state: State, step: Step, place: Place): number =>
  listOf(state.trials).filter(
    (trial) => trial.status === 'void' && trial.step === step.name && samePlace(trial.place, place),
  ).length
