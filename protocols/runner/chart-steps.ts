/** The part of the chart that is one step of the file: its kind's own chart, and what can befall any step. */
import type { Step } from '../language/model.ts'
import { closeAs, closeStep, mishaps, skipStep } from './befalls.ts'
import { AGAIN, LEAVE, type StepMove, type StepState } from './chart-parts.ts'
import { type Ground, hasRow, isTrial, placeAround } from './due.ts'
import { frontOfFurther } from './further-readings.ts'
import type { Happened, State } from './state.ts'
import { dataOf, leaving, misplaced, type StepGround, stepKind } from './step-ground.ts'
import { stepMoment } from './step-moment.ts'
import {
  along,
  atOnce,
  both,
  type Change,
  type ChartNode,
  entering,
  type Law,
  type Transition,
  transition,
} from './transitions.ts'
import { applyEffect, breakOff, stand, startVisit } from './trials.ts'
import { stateOf } from './tree.ts'
import { practiceBefore, waysAfter } from './ways.ts'

/** Events that the chart sends itself; no event of the log has such a name. */
export const INTERRUPTED = '=interrupted'
export const SETTLE_NOTHING = '=settle_nothing'
export const SETTLE_TRIAL = '=settle_trial'
export const PRACTISE = '=practise'

const FRONT = '=front'

export function stepNode(ground: Ground, step: Step): ChartNode {
  const at: StepGround = {
    ...ground,
    step,
    kind: stepKind(step),
    id: step.name,
    ways: waysAfter(ground, step.name),
  }
  const { chart } = at.kind
  const front = [...(frontOfGiven(at) ?? []), ...(frontOfFurther(at) ?? frontOfIdle(at) ?? [])]
  const always = [...front, atOnce(stateOf(step.name, chart.initial), null, null)]
  const states: Record<string, ChartNode> = front.length === 0 ? {} : { [FRONT]: { always } }
  for (const [name, state] of Object.entries(chart.states)) states[name] = kindState(at, name, state)
  return {
    id: step.name,
    initial: entering(front.length === 0 ? chart.initial : FRONT, (state) => ({
      at: step.name,
      visit: startVisit(state, step, chart.initial),
      flight: null,
      running: false,
    })),
    states,
    on: {
      closed: closeStep(at),
      skipped: skipStep(at),
      [SETTLE_TRIAL]: settledTrial(at),
      [PRACTISE]: practice(at),
    },
  }
}

/** A step that has nothing to do here is passed over at once. */
function frontOfIdle(at: StepGround): Transition[] | null {
  const { idle, initial } = at.kind.chart
  return idle === undefined ? null : passedOver(at, (state) => idle(stepMoment(at, state, initial)))
}

/** While something missing is given, a trial that stands is passed over. */
function frontOfGiven(at: StepGround): Transition[] | null {
  const { step } = at
  if (!isTrial(step)) return null
  return passedOver(at, (state) => state.detour !== null && hasRow(state, { step, place: state.place }))
}

const passedOver = (at: StepGround, holds: (state: State) => boolean): Transition[] =>
  at.ways.map((way) => atOnce(way.target, (state) => holds(state) && way.when?.(state) !== false, way.change))

function kindState(at: StepGround, name: string, state: StepState): ChartNode {
  return {
    id: stateOf(at.step.name, name),
    on: {
      ...movesOf(at, name, state),
      ...mishaps(at, state),
      interrupted: interruption(at, state),
      [SETTLE_NOTHING]: goOn(at, state),
    },
  }
}

/** What leads on in a state of the kind's own chart. */
export function movesOf(at: StepGround, name: string, state: StepState): Record<string, Transition[]> {
  const on: Record<string, Transition[]> = {}
  for (const [event, moves] of Object.entries(state.on)) {
    on[`${at.step.kind}.${event}`] = moves.flatMap((move, index) =>
      moveTransitions(at, name, move, moves.slice(0, index)),
    )
  }
  return on
}

function moveTransitions(
  at: StepGround,
  name: string,
  move: StepMove,
  before: readonly StepMove[],
): Transition[] {
  const law: Law = {
    ...(move.main && { main: true }),
    ...(move.automatic && { automatic: true }),
    when: (state, event) => {
      const moment = stepMoment(at, state, name)
      const data = dataOf(event.body)
      const isMeant = (each: StepMove) => each.when?.(moment, data) !== false
      return isMeant(move) && !before.some(isMeant)
    },
    refuses: (state, event) =>
      misplaced(state, event) ?? move.refuses?.(stepMoment(at, state, name), dataOf(event.body)) ?? null,
  }
  const effect = (state: State, event: Happened) =>
    move.does?.(stepMoment(at, state, name), dataOf(event.body)) ?? {}
  const does: Change = (state, event) => applyEffect(state, event, at.step, effect(state, event))
  if (move.to === LEAVE) {
    return along(
      at.ways,
      law,
      both(
        does,
        both((state) => stand(at, state, null, ''), leaving),
      ),
    )
  }
  if (move.to !== AGAIN) {
    const running = at.kind.chart.states[move.to]?.flight === 'running'
    return [
      transition(
        stateOf(at.id, move.to),
        law,
        both(does, ({ visit }) => ({ running, visit: visit && { ...visit, state: move.to } })),
      ),
    ]
  }
  const breaks: Change = (state, event) => {
    const { void: cause = { happening: null, cause: 'examiner' } } = effect(state, event)
    return both(does, (now) => breakOff(at, now, event, { ...cause, valueSeen: false, counts: false }))(
      state,
      event,
    )
  }
  return [transition(at.id, law, breaks)]
}

/** An interruption voids a running trial; one that only waits to be kept stays; anything else begins anew. */
export function interruption(at: StepGround, state: StepState): Transition[] {
  if (state.flight === 'held') return []
  const running = state.flight === 'running'
  const law: Law = { automatic: true, when: (_state, event) => running || causeOf(event) !== 'focus_lost' }
  const change: Change = (now, event) => (running ? breakOff(at, now, event, brokenBy(causeOf(event))) : {})
  return [transition(at.id, law, change, INTERRUPTED)]
}

export const causeOf = ({ body }: Happened): string => ('cause' in body ? String(body.cause) : 'restart')

const brokenBy = (cause: string) => ({ happening: null, cause, valueSeen: false, counts: false })

/** Going on after a stop for the client's sake: a trial that was running is void, one that was over stays. */
function goOn(at: StepGround, state: StepState): Transition[] {
  if (state.flight !== 'running') return []
  return [
    transition(at.step.name, { automatic: true }, (now, event) =>
      breakOff(at, now, event, brokenBy('halted')),
    ),
  ]
}

/** Back to the practice of this place; afterwards the step goes on where it was. */
function practice(at: StepGround): Transition[] {
  const target = practiceBefore(at.tree, at.step.name)
  if (target === null) return []
  return [
    transition(target.name, { automatic: true }, (state, event) => {
      const over = state.running ? { ...state, ...breakOff(at, state, event, brokenBy('halted')) } : state
      const { visit, flight, trials } = over
      return {
        trials,
        visit,
        returning: visit && { visit, flight },
        place: placeAround(at.tree, target.name, state.place),
      }
    }),
  ]
}

/** The stop ends this trial: what was measured and over stands, what was running is a row without a value. */
function settledTrial(at: StepGround): Transition[] {
  const closes = closeAs(at, ({ flight }) => (flight?.outcome === 'done' ? null : 'stopped'))
  return along(at.ways, { automatic: true }, both(closes, leaving))
}
