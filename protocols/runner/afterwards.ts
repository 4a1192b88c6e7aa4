/** What can be told or put right at any time: nothing here re-routes what is being given. */
import { otherSide, type Side } from '../client.ts'
import { STEP_KINDS } from '../language/schema/kinds.ts'
import type { Ground } from './due.ts'
import type { EventBody, Place, RunnerEvent } from './events.ts'
import { grow, type Grown, listOf, newest, replaced } from './grown.ts'
import { differing } from './judging-again.ts'
import type { StepMoment } from './moment.ts'
import { samePlace } from './places.ts'
import { isWithin, notPlausible, type Range } from './plausible.ts'
import type { Happened, Judged, State } from './state.ts'
import { stepKind } from './step-ground.ts'
import { stepMoment } from './step-moment.ts'
import { type Law, type Transition, transition } from './transitions.ts'
import { stepOf } from './tree.ts'
import { refuse } from './refuse.ts'
import type { Correction, Deviation, Reading, Refusal, Trial } from './view.ts'

type Kind = RunnerEvent['kind']
type Body<K extends Kind> = Extract<RunnerEvent, { readonly kind: K }>

/** A law and a change for events of one kind, whose body the contract has checked. */
interface Told<K extends Kind> extends Pick<Law, 'main' | 'automatic' | 'waits'> {
  readonly when?: (state: State, body: Body<K>, event: Happened) => boolean
  readonly refuses?: (state: State, body: Body<K>, event: Happened) => Refusal | null
  readonly change: (state: State, body: Body<K>, event: Happened) => Partial<State>
}

/** The transitions of one of the runner's own events; without a target the chart stays where it is. */
export function told<K extends Kind>(
  _kind: K,
  of: Told<K>,
  target: string | null = null,
  raises?: string,
): Transition {
  const { when, refuses, change, ...law } = of
  const body = (event: Happened) => event.body as EventBody as Body<K>
  return transition(
    target,
    {
      ...law,
      ...(when && { when: (state, event) => when(state, body(event), event) }),
      ...(refuses && { refuses: (state, event) => refuses(state, body(event), event) }),
    },
    (state, event) => change(state, body(event), event),
    raises,
  )
}

export const deviate = (
  state: State,
  event: Happened,
  deviation: Pick<Deviation, 'code' | 'what' | 'reason' | 'norms'>,
): Partial<State> => ({
  deviations: grow(state.deviations, { ...deviation, at: event.at, by: event.user }),
})

const correct = (
  state: State,
  event: Happened,
  correction: Omit<Correction, 'at' | 'by'>,
): Pick<State, 'corrections'> => ({
  corrections: grow(state.corrections, { ...correction, at: event.at, by: event.user }),
})

const isWaitingForReason = ({ status, void: broken }: Trial): boolean =>
  status === 'void' && broken?.cause === 'examiner' && broken.happening === null

/** Void trials that no reason was given for yet. */
export const unexplained = (state: State): readonly Trial[] => listOf(state.trials).filter(isWaitingForReason)

function trialAt(state: State, id: string): { readonly index: number; readonly trial: Trial } | null {
  const index = listOf(state.trials).findLastIndex((trial) => trial.id === id)
  const trial = state.trials.items[index]
  return trial === undefined ? null : { index, trial }
}

const explained = (ground: Ground): Told<'explained'> => ({
  waits: (state) => !listOf(state.trials).some(({ status }) => status === 'void'),
  refuses: (state, { trial, happening }) => {
    const found = trialAt(state, trial)
    if (found?.trial.status !== 'void') return refuse('not_void', { trial })
    const known = ground.protocol.happenings.find(({ name }) => name === happening)
    return known?.becomes === 'void' ? null : refuse('no_void_reason', { happening })
  },
  change: (state, { trial: id, happening, remark }) => {
    const found = trialAt(state, id)
    if (found === null || found.trial.void === null) return {}
    const { index, trial } = found
    return {
      trials: replaced(state.trials, index, { ...trial, void: { ...found.trial.void, happening, remark } }),
    }
  },
})

/** A value that was measured; at the limit only what was told then, such as how far it went. */
const wasMeasured = (outcome: Trial['outcome'], { typed, value }: Reading): boolean =>
  outcome === 'done' || (outcome === 'limit' && typed && value !== null)

const isCorrectable = ({ status, outcome, readings }: Trial): boolean =>
  status === 'standing' && Object.values(readings).some((reading) => wasMeasured(outcome, reading))

/** A trial's step as its kind sees it where the trial was given. */
function momentOf(ground: Ground, state: State, trial: Trial): StepMoment {
  const step = stepOf(ground.tree, trial.step)
  const there = { ...state, visit: null, flight: null, place: trial.place }
  return stepMoment({ ...ground, step }, there, '')
}

/** What is plausible for a value of a trial where it was given. */
const rangeOf = (ground: Ground, state: State, trial: Trial, column: string): Range | null =>
  stepKind(stepOf(ground.tree, trial.step)).plausible(momentOf(ground, state, trial), column)

const corrected = (ground: Ground): Told<'corrected'> => ({
  waits: ({ trials }) => newest(trials, isCorrectable) === null,
  refuses: (state, { trial: id, column, value, confirmed = false }) => {
    const found = trialAt(state, id)
    if (found === null) return refuse('no_such_trial', { trial: id })
    const { trial } = found
    if (!isCorrectable(trial)) return refuse('not_correctable', { trial: id })
    const step = stepOf(ground.tree, trial.step)
    const type = STEP_KINDS.get(step.kind)?.columns(step)[column]
    const reading = trial.readings[column]
    if (type === undefined || reading === undefined) return refuse('no_such_column', { column })
    if (!wasMeasured(trial.outcome, reading)) return refuse('not_correctable', { trial: id })
    if ((type.is === 'number') !== (typeof value === 'number')) return refuse('wrong_type', { column })
    const misfit = stepKind(step).misfits?.(momentOf(ground, state, trial), column, value) ?? null
    if (misfit !== null) return misfit
    const range = rangeOf(ground, state, trial, column)
    return range !== null && typeof value === 'number' ? notPlausible(value, range, confirmed) : null
  },
  change: (state, { trial: id, column, value, reason }, event) => {
    const found = trialAt(state, id)
    const reading = found?.trial.readings[column]
    if (found === null || reading === undefined) return {}
    const { index, trial } = found
    const first = reading.corrected === null ? reading.value : reading.corrected.first
    const range = rangeOf(ground, state, trial, column)
    const confirmed = range !== null && typeof value === 'number' && !isWithin(value, range)
    const readings = {
      ...trial.readings,
      [column]: { ...reading, value, over: false, typed: true, confirmed, corrected: { first, reason } },
    }
    const trials = replaced(state.trials, index, { ...trial, readings })
    const correction = {
      code: 'value',
      trial: id,
      column,
      first: String(reading.value),
      now: String(value),
      reason,
    } as const
    return {
      trials,
      ...correct(state, event, correction),
      wouldDiffer: differing(ground, { ...state, trials }),
    }
  },
})

const mirrored = (side: string) => otherSide(side as Side)

/** A section over the hands has taken the other hand next. */
const judgedMirrored = (overHands: ReadonlySet<string>, judged: Grown<Judged>): Grown<Judged> => ({
  ...judged,
  items: judged.items.map((each) =>
    overHands.has(each.rule) && typeof each.verdict === 'string'
      ? { ...each, verdict: mirrored(each.verdict) }
      : each,
  ),
})

/** Right for left in every trial, order and place over the hands: the hands were taken for each other. */
const relabelled = (ground: Ground): Told<'relabelled'> => ({
  waits: ({ orders }) => orders.length === 0,
  refuses: ({ facts }) =>
    facts !== null && (facts.arms.right.status === 'absent' || facts.arms.left.status === 'absent')
      ? refuse('only_one_hand')
      : null,
  change: (state, { reason }, event) => {
    const overHands = new Set(
      [...ground.tree.spots.values()].flatMap(({ node }) =>
        node.node === 'section' && node.fields.in === 'hands' ? [node.name] : [],
      ),
    )
    const swap = (place: Place): Place =>
      Object.fromEntries(
        Object.entries(place).map(([loop, pass]) => [
          loop,
          overHands.has(loop) && typeof pass === 'string' ? mirrored(pass) : pass,
        ]),
      )
    const swapIn = <Of extends { readonly place: Place }>(all: Grown<Of>): Grown<Of> => ({
      items: listOf(all).map((each) => ({ ...each, place: swap(each.place) })),
      length: all.length,
    })
    const orders = swapIn(state.orders)
    const { visit, flight, returning } = state
    return {
      trials: swapIn(state.trials),
      ends: swapIn(state.ends),
      judged: judgedMirrored(overHands, swapIn(state.judged)),
      rules: swapIn(state.rules),
      cuts: swapIn(state.cuts),
      wouldDiffer: state.wouldDiffer.map((each) => ({ ...each, place: swap(each.place) })),
      orders: {
        ...orders,
        items: orders.items.map((each) =>
          overHands.has(each.section) ? { ...each, items: each.items.map(mirrored) } : each,
        ),
      },
      place: swap(state.place),
      closedHands: Object.fromEntries(
        Object.entries(state.closedHands).map(([side, as]) => [mirrored(side), as]),
      ),
      visit: visit && { ...visit, place: swap(visit.place) },
      returning: returning && {
        visit: { ...returning.visit, place: swap(returning.visit.place) },
        flight: returning.flight && { ...returning.flight, place: swap(returning.flight.place) },
      },
      flight: flight && { ...flight, place: swap(flight.place) },
      ...deviate(state, event, { code: 'hands_relabelled', what: '', reason, norms: 'caution' }),
      ...correct(state, event, { code: 'hands', trial: null, column: null, first: '', now: '', reason }),
    }
  },
})

const reattributed: Told<'reattributed'> = {
  refuses: (_state, { examiner, on }) =>
    examiner === null && on === null ? refuse('nothing_changed') : null,
  change: (state, { examiner, on, reason }, event) => {
    const other = { trial: null, column: null, reason }
    let now: Partial<State> = {}
    if (examiner !== null) {
      const correction = { ...other, code: 'examiner', first: state.examiner, now: examiner.name } as const
      now = { examiner: examiner.name, ...correct(state, event, correction) }
    }
    if (on !== null) {
      const correction = { ...other, code: 'date', first: state.on, now: on } as const
      now = { ...now, on, ...correct({ ...state, ...now }, event, correction) }
    }
    return now
  },
}

const assigned: Told<'assigned'> = {
  refuses: (state, { reason }) =>
    state.facts !== null && reason === null && state.begun ? refuse('reason_missing') : null,
  change: (state, { client, facts, reason }, event) => ({
    client,
    facts,
    ...(state.facts !== null &&
      client !== state.client &&
      correct(state, event, {
        code: 'client',
        trial: null,
        column: null,
        first: state.client ?? '',
        now: client ?? '',
        reason: reason ?? '',
      })),
  }),
}

/** What the protocol allows leaves norms as they are; anything else changes what is measured. */
const accommodated = (ground: Ground): Told<'accommodated'> => ({
  refuses: (_state, { accommodation }) =>
    accommodation === null || ground.protocol.accommodations.some(({ id }) => id === accommodation)
      ? null
      : refuse('no_such_accommodation', { accommodation }),
  change: (state, { accommodation, what, reason }, event) =>
    deviate(
      state,
      event,
      accommodation === null
        ? { code: 'modification', what, reason, norms: 'withheld' }
        : { code: 'accommodation', what, reason, norms: 'kept' },
    ),
})

/**
 * A signal goes to the trial that it was given with: the one in flight at that step, the one that is made ready there,
 * or the last that was given there, as its end may be heard after that of the trial. It changes nothing else.
 */
const signalled: Told<'signalled'> = {
  automatic: true,
  change: ({ flight, visit, trials }, { step, place, signal, by, at }) => {
    const given = { signal, by, at }
    const isHere = (of: Pick<Trial, 'step' | 'place'> | null) =>
      of !== null && of.step === step && samePlace(of.place, place)
    if (flight !== null && isHere(flight))
      return { flight: { ...flight, signals: [...(flight.signals ?? []), given] } }
    if (visit !== null && isHere(visit) && signal === 'ready')
      return { visit: { ...visit, signals: [...(visit.signals ?? []), given] } }
    const index = listOf(trials).findLastIndex(isHere)
    const trial = trials.items[index]
    if (trial === undefined) return {}
    return { trials: replaced(trials, index, { ...trial, signals: [...(trial.signals ?? []), given] }) }
  },
}

/** Transitions that every phase has, once the administration was opened. */
export function afterwards(ground: Ground): Record<string, Transition[]> {
  return {
    assigned: [told('assigned', assigned)],
    clock: [told('clock', { automatic: true, change: (_state, clock) => ({ clock }) })],
    signalled: [told('signalled', signalled)],
    deviated: [
      told('deviated', {
        change: (state, { what, reason, norms }, event) =>
          deviate(state, event, { code: 'told', what, reason, norms }),
      }),
    ],
    accommodated: [told('accommodated', accommodated(ground))],
    remarked: [
      told('remarked', {
        change: (state, { text }, { at, user }) => ({ remarks: grow(state.remarks, { text, at, by: user }) }),
      }),
    ],
    explained: [told('explained', explained(ground))],
    corrected: [told('corrected', corrected(ground))],
    relabelled: [told('relabelled', relabelled(ground))],
    reattributed: [told('reattributed', reattributed)],
    noted: [told('noted', { change: (_state, { text }) => ({ note: text }) })],
  }
}
