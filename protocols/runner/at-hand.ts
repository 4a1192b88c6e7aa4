/** What waits to be done now, without words: for those who act by it and show nothing, many times over. */
import { type Administration } from './administration.ts'
import { unexplained } from './afterwards.ts'
import { openCells, outOfTurn } from './cells.ts'
import type { Chance } from './chart-parts.ts'
import { askingOf } from './chart-rules.ts'
import { type Ground, sectionChart } from './due.ts'
import type { Place } from './events.ts'
import { orderingMoment } from './ordering.ts'
import { innermost, phaseOf } from './refusals.ts'
import { sheetAt } from './showing-sheet.ts'
import type { State } from './state.ts'
import { stepKind } from './step-ground.ts'
import { stepMoment } from './step-moment.ts'
import { spotOf, stateOf } from './tree.ts'
import type { StepView, Trial } from './view.ts'

/** A step as it stands; its face is worked out when it is asked for. */
export interface StepAtHand extends Pick<StepView, 'name' | 'kind' | 'state' | 'place' | 'practice'> {
  face(): StepView['face']
}

/** A page with the cells that have no row yet, in the order of the protocol. */
export interface SheetAtHand {
  readonly section: string
  readonly place: Place
  readonly open: readonly {
    readonly step: string
    readonly kind: string
    readonly place: Place
    /** False where an earlier one has to be given first. */
    readonly inTurn: boolean
  }[]
}

export interface AtHand {
  readonly phase: string
  readonly step: StepAtHand | null
  readonly sheet: SheetAtHand | null
  /** A rule that asks before it acts. */
  readonly asking: { readonly rule: string; readonly place: Place } | null
  /** A section whose order is the examiner's to choose, with its items as the list has them. */
  readonly choosing: {
    readonly section: string
    readonly place: Place
    readonly list: string
    readonly items: readonly string[]
  } | null
  /** The trial that is being given, or waits to be kept. */
  readonly flight: Trial | null
  /** Ids of void trials whose reason is still due. */
  readonly unexplained: readonly string[]
}

export function atHand(ground: Ground, administration: Administration): AtHand {
  const { snapshot } = administration
  const state = snapshot.context
  const phase = phaseOf(snapshot)
  return {
    phase,
    step: stepAtHand(ground, state, phase),
    sheet: sheetAtHand(ground, state, phase),
    asking: askingAtHand(ground, administration),
    choosing: choosingAtHand(ground, administration),
    flight: state.flight,
    unexplained: unexplained(state).map(({ id }) => id),
  }
}

const isOver = (phase: string): boolean => phase === 'finished' || phase === 'withdrawn'

export function stepAtHand(ground: Ground, state: State, phase: string): StepAtHand | null {
  const { visit } = state
  if (isOver(phase) || visit === null || state.at !== visit.step) return null
  const { node } = spotOf(ground.tree, visit.step)
  if (node.node !== 'step') return null
  return {
    name: node.name,
    kind: node.kind,
    state: visit.state,
    place: visit.place,
    practice: node.practice,
    face: () => ({ ...stepKind(node).face(stepMoment({ ...ground, step: node }, state, visit.state)) }),
  }
}

function sheetAtHand(ground: Ground, state: State, phase: string): SheetAtHand | null {
  const sheet = isOver(phase) ? null : sheetAt(ground, state)
  if (sheet === null) return null
  return {
    section: sheet.section.name,
    place: state.place,
    open: openCells(sheet, state).map((cell) => ({
      step: cell.step.name,
      kind: cell.step.kind,
      place: cell.place,
      inTurn: outOfTurn(sheet, state, cell) === null,
    })),
  }
}

export function askingAtHand(ground: Ground, { snapshot }: Administration): AtHand['asking'] {
  const { at, place } = snapshot.context
  const { node } = ground.tree.spots.get(at) ?? {}
  if (node?.node !== 'rule' || node.confirm === null) return null
  if (phaseOf(snapshot) !== 'giving' || stateOf(at, innermost(snapshot)) !== askingOf(at)) return null
  return { rule: at, place }
}

/** Whether a section's order is anybody's to choose doesn't hang on what would be drawn. */
const NO_CHANCE: Chance = { random: () => 0, earlier: () => [] }

export function choosingAtHand(ground: Ground, { snapshot }: Administration): AtHand['choosing'] {
  const moment = orderingMoment(ground, snapshot)
  if (moment === null || sectionChart(moment.section).order(moment, NO_CHANCE) !== null) return null
  const leftOut = sectionChart(moment.section).leftOut(moment)
  const items = moment.items.filter((item) => !leftOut.includes(item))
  return {
    section: moment.section.name,
    place: moment.around,
    list: String(moment.section.fields.in),
    items,
  }
}
