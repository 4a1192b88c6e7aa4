/**
 * The part of the chart that is a sheet: one page on which each trial is a cell. An event names its step and place, so
 * any cell may be given that isn't out of turn; what was typed may be typed again until the page is left.
 */
import { stepsOnSheet } from '../language/sheet.ts'
import type { Section } from '../language/model.ts'
import {
  attemptsAt,
  type Cell,
  cellAt,
  cellIn,
  cellsOf,
  inPageOrder,
  isClosable,
  openCells,
  openWithin,
  outOfTurn,
  rowOf,
  type Sheet,
  takesOrder,
} from './cells.ts'
import { happeningOf } from './befalls.ts'
import type { VoidCause } from './chart-parts.ts'
import { ORDERING, orderingNode, TURN } from './chart-sections.ts'
import { type Ground, placeAround } from './due.ts'
import type { Place } from './events.ts'
import { grow, listOf } from './grown.ts'
import { isPartOf, samePlace } from './places.ts'
import { givenIn, refusedIn } from './playing.ts'
import { refuse } from './refuse.ts'
import type { Happened, State } from './state.ts'
import { stepKind } from './step-ground.ts'
import {
  along,
  atOnce,
  type Change,
  type ChartNode,
  entering,
  type Law,
  onEntry,
  type Transition,
  transition,
} from './transitions.ts'
import { stateOf, turnOf } from './tree.ts'
import { addRows, newTrial, voidBy, voidsBefore } from './trials.ts'
import type { Refusal, Trial } from './view.ts'
import { waysAfter } from './ways.ts'

const PAGE = ':page'

const pageOf = (section: string): string => stateOf(section, PAGE)

export function sheetNode(ground: Ground, section: Section): ChartNode {
  const sheet: Sheet = { ...ground, section }
  const ordered = takesOrder(sheet)
  const here: Change = (state) => ({
    at: section.name,
    place: placeAround(ground.tree, section.name, state.place),
    visit: null,
    flight: null,
    running: false,
  })
  const over = waysAfter(ground, section.name).map((way) =>
    atOnce(
      way.target,
      (state) => openCells(sheet, state).length === 0 && way.when?.(state) !== false,
      way.change,
    ),
  )
  return {
    id: section.name,
    initial: entering(ordered ? ORDERING : TURN, here),
    states: {
      ...(ordered && { [ORDERING]: orderingNode(ground, section) }),
      [TURN]: {
        id: turnOf(section.name),
        entry: onEntry(settles(sheet)),
        always: [...over, atOnce(pageOf(section.name), null, null)],
      },
      [PAGE]: pageNode(sheet),
    },
  }
}

/** Cells that are settled before the page begins, such as those of a hand that isn't there, get their rows. */
function settles(sheet: Sheet): Change {
  return (state, event) => {
    const settled = cellsOf(sheet, state).filter(({ outcome }) => outcome !== null)
    return rowsFor(sheet, state, event, settled, 'not_given')
  }
}

function pageNode(sheet: Sheet): ChartNode {
  const byKind = new Map(
    stepsOnSheet(sheet.section).flatMap((step) => {
      const kind = stepKind(step)
      const events = kind.onSheet?.(step) ?? null
      return events === null ? [] : [[`${kind.kind}.${events.gives}`, gives(sheet)] as const]
    }),
  )
  return {
    id: pageOf(sheet.section.name),
    on: {
      ...Object.fromEntries([...byKind].map(([event, made]) => [event, [made]])),
      closed: [closesCell(sheet), closesCells(sheet)],
      voided: [voids(sheet, {}, () => ({ happening: null, cause: 'examiner' }))],
      happened: [
        voids(sheet, { when: (_state, event) => happeningOf(sheet, event)?.becomes === 'void' }, (event) => ({
          happening: happeningOf(sheet, event)?.name ?? null,
          cause: 'happening',
        })),
      ],
      sheet_left: leaves(sheet),
    },
  }
}

/** What was put right with a reason is no longer typed over: that would hide the reason. */
const putRight = (row: Trial | null): Refusal | null =>
  row !== null && Object.values(row.readings).some(({ corrected }) => corrected !== null)
    ? refuse('put_right_already', { step: row.step })
    : null

/** A law for events that name a cell. */
function ofCell(
  sheet: Sheet,
  refuses: (state: State, event: Happened, cell: Cell) => Refusal | null,
): NonNullable<Law['refuses']> {
  return (state, event) => {
    const cell = cellIn(sheet, state, event.body)
    return 'refused' in cell ? cell : refuses(state, event, cell)
  }
}

/** A value given in a cell stands at once; one given there before makes place for it. */
function gives(sheet: Sheet): Transition {
  const refuses = ofCell(
    sheet,
    (state, event, cell) =>
      putRight(rowOf(state, cell)) ??
      outOfTurn(sheet, state, cell) ??
      refusedIn(sheet, state, { cell, event, attempts: attemptsAt(state, cell.step, cell.place) }),
  )
  return transition(null, { refuses }, (state, event) => {
    const cell = cellIn(sheet, state, event.body)
    if ('refused' in cell) return {}
    const now = { ...state, ...withoutRow(state, cell) }
    const attempts = attemptsAt(state, cell.step, cell.place)
    const { trial, ...rest } = givenIn(sheet, now, { cell, event, attempts })
    return { ...rest, ...placed(sheet, { ...now, ...rest, trials: grow(now.trials, trial) }) }
  })
}

const placed = (sheet: Sheet, state: State): Pick<State, 'trials'> => ({ trials: inPageOrder(sheet, state) })

function withoutRow(state: State, cell: Cell): Pick<State, 'trials'> {
  const row = rowOf(state, cell)
  if (row === null) return { trials: state.trials }
  const items = listOf(state.trials).filter(({ id }) => id !== row.id)
  return { trials: { items, length: items.length } }
}

function rowsFor(
  sheet: Sheet,
  state: State,
  event: Happened,
  cells: readonly Cell[],
  outcome: 'not_given',
): Partial<State> {
  if (cells.length === 0) return {}
  const added = addRows(sheet, state, event, cells, { outcome })
  return { ...added, ...placed(sheet, { ...state, ...added }) }
}

const whatIn = ({ body }: Happened): string => ('what' in body ? String(body.what) : '')
const placeIn = ({ body }: Happened): Place => ('place' in body ? (body.place as Place) : {})
const outcomeIn = ({ body }: Happened) => ('outcome' in body ? body.outcome : 'not_given') as 'not_given'

/** One cell gets an outcome instead of a value, also one that had a value. */
function closesCell(sheet: Sheet): Transition {
  const steps = new Set(stepsOnSheet(sheet.section).map(({ name }) => name))
  const cellOf = (state: State, event: Happened) => cellAt(sheet, state, whatIn(event), placeIn(event))
  return transition(
    null,
    {
      when: (_state, event) => steps.has(whatIn(event)),
      refuses: (state, event) => {
        const cell = cellOf(state, event)
        return 'refused' in cell ? cell : putRight(rowOf(state, cell))
      },
    },
    (state, event) => {
      const cell = cellOf(state, event)
      if ('refused' in cell) return {}
      const now = { ...state, ...withoutRow(state, cell) }
      return rowsFor(sheet, now, event, [cell], outcomeIn(event))
    },
  )
}

/** All open cells of the page, or of one pass of a loop on it, get the same outcome; what was given stays. */
function closesCells(sheet: Sheet): Transition {
  return transition(
    null,
    {
      when: (_state, event) => isClosable(sheet, whatIn(event)),
      refuses: (state, event) => {
        if (!isPartOf(state.place, placeIn(event))) return refuse('wrong_place', { section: whatIn(event) })
        return openWithin(sheet, state, placeIn(event)).length > 0 ? null : refuse('nothing_open')
      },
    },
    (state, event) =>
      rowsFor(sheet, state, event, openWithin(sheet, state, placeIn(event)), outcomeIn(event)),
  )
}

/** A trial that went wrong is void, and its cell open again while void trials may be made good. */
function voids(sheet: Sheet, law: Law, cause: (event: Happened) => VoidCause): Transition {
  const refuses = ofCell(sheet, (state, _event, cell) => {
    const row = rowOf(state, cell)
    return row === null || row.outcome === 'done' ? null : refuse('no_trial', { step: cell.step.name })
  })
  return transition(null, { ...law, refuses }, (state, event) => {
    const cell = cellIn(sheet, state, event.body)
    if ('refused' in cell) return {}
    const { step, place } = cell
    const row = rowOf(state, cell)
    const attempts = attemptsAt(state, step, place)
    const mayRepeat = step.voids === null || voidsBefore(state, step, place) < step.voids
    const trial =
      row ?? newTrial(event, step, { step: step.name, place, attempts, voids: 0, state: '', local: {} })
    const broken: Trial = {
      ...trial,
      status: 'void',
      outcome: null,
      void: voidBy(event, { ...cause(event), valueSeen: row !== null }),
    }
    const rest = withoutRow(state, cell).trials
    const now: State = {
      ...state,
      trials: grow(rest, broken),
      made: { event: event.id, count: row === null ? 1 : 0 },
    }
    return {
      trials: inPageOrder(sheet, now),
      made: now.made,
      ...(mayRepeat ? {} : noMore(sheet, now, event, cell)),
    }
  })
}

/** No further attempt is allowed: the cell is closed as not given. */
const noMore = (sheet: Sheet, state: State, event: Happened, cell: Cell): Partial<State> =>
  rowsFor(sheet, state, event, [cell], 'not_given')

/** The page is left once no cell is open: nothing on it is a blank. */
function leaves(sheet: Sheet): Transition[] {
  const { section } = sheet
  const refuses = (state: State, { body }: Happened): Refusal | null => {
    if (!('section' in body) || body.section !== section.name) {
      return refuse('wrong_section', { at: section.name })
    }
    if (!samePlace(body.place as Place, state.place)) return refuse('wrong_place', { section: section.name })
    const open = openCells(sheet, state).length
    return open === 0 ? null : refuse('cells_open', { count: open })
  }
  const waits = (state: State) => openCells(sheet, state).length > 0
  const passes: Change = (state) => ({ passed: state.passed + cellsOf(sheet, state).length })
  return along(waysAfter(sheet, section.name), { main: true, waits, refuses }, passes)
}
