/** How trials begin, stand, become void, and how rows come about that nobody gave. */
import type { Outcome, Quantity, Step } from '../language/model.ts'
import { STEP_KINDS } from '../language/schema/kinds.ts'
import type { Effect, VoidCause } from './chart-parts.ts'
import { type Due, type Ground, hasRow, isTrial } from './due.ts'
import type { Place, Stamp } from './events.ts'
import { grow, listOf, newest } from './grown.ts'
import type { ClockTime } from './moment.ts'
import { samePlace } from './places.ts'
import type { Ending, Happened, State, Visit } from './state.ts'
import { unratable } from './raters.ts'
import { stepOf } from './tree.ts'
import type { Reading, Trial } from './view.ts'

/** Far apart, so that no row's id meets the id of an event made just after. */
const ROW_STRIDE = 97_003_921_337

/** The `n`th row that one event brings about: the event's own id for the first, told apart in its last digits. */
function rowId(event: string, n: number): string {
  if (n === 0) return event
  const tail = (Number.parseInt(event.slice(24), 16) + n * ROW_STRIDE) % 2 ** 48
  return event.slice(0, 24) + tail.toString(16).padStart(12, '0')
}

export function startVisit(state: State, step: Step, initial: string): Visit {
  const { visit, place, returning } = state
  for (const earlier of [visit, returning?.visit]) {
    if (earlier?.step === step.name && samePlace(earlier.place, place)) {
      return { ...earlier, state: initial, local: {} }
    }
  }
  return {
    step: step.name,
    place,
    attempts: 0,
    voids: voidsBefore(state, step, place),
    state: initial,
    local: {},
  }
}

/**
 * Void trials that the examiner declared at a step, of the same hand or item, in whichever pass of a repeat: a
 * hand that gets two extra squeezes gets them once, not in each round.
 */
export function voidsBefore(state: State, step: Step, place: Place): number {
  if (step.voids === null) return 0
  return listOf(state.trials).filter(
    (trial) =>
      trial.step === step.name &&
      ['examiner', 'happening'].includes(trial.void?.cause ?? '') &&
      isSameItem(trial.place, place),
  ).length
}

/** True for places that differ at most in the passes of repeats. */
const isSameItem = (earlier: Place, place: Place): boolean =>
  Object.entries(earlier).every(
    ([loop, pass]) => typeof pass === 'number' || place[loop] === undefined || place[loop] === pass,
  )

export function newTrial(event: Happened, step: Step, visit: Visit): Trial {
  return {
    id: event.id,
    step: step.name,
    place: visit.place,
    attempt: visit.attempts + 1,
    practice: step.practice,
    status: 'running',
    outcome: null,
    readings: {},
    input: null,
    stamps: [],
    lateMs: 0,
    happenings: [],
    void: null,
    remark: '',
    at: event.at,
  }
}

function latenessOf({ body }: Happened): number {
  const stamp = 'stamp' in body ? (body.stamp as Stamp | null) : null
  return stamp?.late ?? 0
}

/** Applies what a move of the step's kind did: notes, a trial begun, what became known of it. */
export function applyEffect(state: State, event: Happened, step: Step, effect: Effect): Partial<State> {
  const { visit } = state
  if (visit === null) return {}
  const begun = effect.begins
    ? {
        ...newTrial(event, step, visit),
        input: effect.begins.input,
        stamps: [...effect.begins.stamps],
        ...(visit.signals && { signals: visit.signals }),
      }
    : state.flight
  const flight = begun && { ...begun, ...effect.trial, lateMs: Math.max(begun.lateMs, latenessOf(event)) }
  return {
    flight,
    ...(effect.begins && { made: { event: event.id, count: 1 } }),
    visit: {
      ...visit,
      local: effect.local ?? visit.local,
      ...(effect.begins && visit.signals && { signals: [] }),
    },
    ...(effect.dead && { dead: effect.dead }),
    ...(effect.ends && { ends: grow(state.ends, { ...effect.ends, step: step.name, place: visit.place }) }),
    ...(effect.deviates && {
      deviations: effect.deviates.reduce(
        (all, each) => grow(all, { ...each, at: event.at, by: event.user }),
        state.deviations,
      ),
    }),
  }
}

/**
 * When the last trial of a step ended, as seen from a place: of the same hand or item, in whichever pass of a
 * repeat. Null when there was none yet.
 */
export function lastEnd(state: State, step: string, place: Place): ClockTime | null {
  const here = (end: Ending) => end.step === step && isSameItem(end.place, place)
  const found = newest(state.ends, here)
  return found && { at: found.at, clock: found.clock }
}

/** The readings that the step's `counts-as` gives an outcome; none where it gives none. */
function countedAs(
  ground: Ground,
  state: State,
  step: Step,
  outcome: Outcome,
  place: Place,
): Trial['readings'] {
  const counts = step.countsAs[outcome]
  const [column, type] = Object.entries(STEP_KINDS.get(step.kind)?.columns(step) ?? {})[0] ?? []
  if (counts === undefined || column === undefined || type?.is !== 'number') return {}
  const found = ground.judging.quantity(state, counts.value, type.unit ?? '1', place)
  if (found === null) return {}
  return { [column]: reading(found.value, type.unit, counts.over || found.over) }
}

const reading = (value: number | null, unit: string | null, over: boolean): Reading => ({
  value,
  unit,
  over,
  typed: false,
  confirmed: false,
  corrected: null,
})

/** What tallied happenings add to a trial, by the protocol; null where it has none that add. */
export function addedTo(ground: Ground, trial: Trial): Quantity | null {
  const adding = ground.protocol.happenings.filter(({ adds }) => adds !== null)
  const unit = adding[0]?.adds?.unit
  if (unit === undefined) return null
  const each = new Map(adding.map(({ name, adds }) => [name, adds?.value ?? 0]))
  return { value: trial.happenings.reduce((sum, name) => sum + (each.get(name) ?? 0), 0), unit }
}

/** Why a trial was closed, where the event says so: it stays with the trial. */
export const reasonIn = ({ body }: Happened): string => ('reason' in body ? String(body.reason) : '')

/** A trial as it stands; without an outcome of its own it was done. */
export function stood(
  ground: Ground,
  state: State,
  flight: Trial,
  { outcome, remark }: { readonly outcome: Outcome | null; readonly remark: string },
): Trial {
  const step = stepOf(ground.tree, flight.step)
  const final = outcome ?? flight.outcome ?? 'done'
  const added = addedTo(ground, flight)
  const measured: Trial['readings'] = outcome === null || outcome === 'done' ? flight.readings : {}
  return {
    ...flight,
    status: 'standing',
    remark,
    outcome: final,
    readings: {
      ...measured,
      ...(added && final === 'done' && { added: reading(added.value, added.unit, false) }),
      ...(final !== 'done' && countedAs(ground, state, step, final, flight.place)),
    },
  }
}

/** The trial in flight stands. */
export function stand(ground: Ground, state: State, outcome: Outcome | null, remark: string): Partial<State> {
  const { flight } = state
  if (flight === null) return {}
  const standing = stood(ground, state, flight, { outcome, remark })
  return { flight: null, running: false, trials: grow(state.trials, standing) }
}

/** That a trial is void: why, and who said so when. */
export const voidBy = (
  { at, user }: Pick<Happened, 'at' | 'user'>,
  { happening, cause, valueSeen }: VoidCause & { readonly valueSeen: boolean },
): NonNullable<Trial['void']> => ({ happening, remark: '', valueSeen, cause, at, by: user })

/** The trial in flight, or one that never came to a value, is void. */
export function breakOff(
  ground: Ground,
  state: State,
  event: Happened,
  cause: VoidCause & { readonly valueSeen: boolean; readonly counts: boolean },
): Partial<State> {
  const { visit, made } = state
  if (visit === null) return {}
  const isNew = state.flight === null
  const trial = state.flight ?? newTrial(event, stepOf(ground.tree, visit.step), visit)
  const broken: Trial = { ...trial, status: 'void', outcome: null, void: voidBy(event, cause) }
  return {
    flight: null,
    running: false,
    trials: grow(state.trials, broken),
    made: isNew ? { event: event.id, count: madeBy(state, event) + 1 } : made,
    visit: {
      ...visit,
      attempts: trial.attempt,
      voids: visit.voids + (cause.counts ? 1 : 0),
      local: {},
    },
  }
}

/** Rows for the trials among the steps that were due and aren't given; what a row stands for already keeps it. */
export function addRows(
  ground: Ground,
  state: State,
  event: Happened,
  due: readonly Due[],
  as: { readonly outcome: Outcome; readonly credit?: Readonly<Record<string, number>> },
): Partial<State> {
  let { trials } = state
  const rows = due.filter((each) => isTrial(each.step) && !hasRow(state, each))
  const from = madeBy(state, event)
  for (const [n, { step, place, outcome: closed }] of rows.entries()) {
    // What is cut off is not rated another day either.
    const settled = closed === 'pending' && as.outcome !== 'pending' ? null : closed
    const credit = settled === null ? as.credit?.[step.name] : undefined
    const ends = settled ?? (as.credit !== undefined && credit === undefined ? 'not_given' : as.outcome)
    const outcome = ends === 'pending' ? (unratable(ground.tree, trials, { step, place }) ?? ends) : ends
    trials = grow(trials, {
      ...newTrial(event, step, { step: step.name, place, attempts: 0, voids: 0, state: '', local: {} }),
      id: rowId(event.id, from + n),
      status: 'standing',
      remark: reasonIn(event),
      outcome,
      readings:
        credit === undefined ? countedAs(ground, state, step, outcome, place) : credited(step, credit),
    })
  }
  return { trials, made: { event: event.id, count: from + rows.length } }
}

const madeBy = ({ made }: State, { id }: Happened): number => (made.event === id ? made.count : 0)

function credited(step: Step, value: number): Trial['readings'] {
  const [column, type] = Object.entries(STEP_KINDS.get(step.kind)?.columns(step) ?? {})[0] ?? []
  if (column === undefined) return {}
  return { [column]: reading(value, type?.is === 'number' ? type.unit : null, false) }
}
