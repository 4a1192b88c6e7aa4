/** Steps that are a further reading of a trial before them: void, repeated and left out together with it. */
import type { Outcome, Step } from '../language/model.ts'
import type { VoidCause } from './chart-parts.ts'
import { placeAround } from './due.ts'
import { grow, listOf, replaced } from './grown.ts'
import { isPartOf } from './places.ts'
import type { Happened, State } from './state.ts'
import { leaving, misplaced, type StepGround } from './step-ground.ts'
import { along, atOnce, both, type Change, type Law, type Transition, transition } from './transitions.ts'
import { addRows, voidBy, voidsBefore } from './trials.ts'
import { stepOf } from './tree.ts'
import type { Trial } from './view.ts'

/** The step whose trial this step reads further, to the first of them; null where it is a trial of its own. */
export function furtherOf(at: StepGround): Step | null {
  let { of } = at.step
  if (of === null) return null
  for (;;) {
    const step = stepOf(at.tree, of)
    if (step.of === null) return step
    of = step.of
  }
}

/** The trials of the first step that stands here and its further readings, by whoever took them: index and trial. */
function group(at: StepGround, state: State, first: Step): [number, Trial][] {
  const members = new Set([
    first.name,
    ...at.tree.steps.filter(({ of }) => of !== null).map(({ name }) => name),
  ])
  return [...listOf(state.trials).entries()].filter(
    ([, trial]) =>
      trial.status === 'standing' &&
      members.has(trial.step) &&
      isFirst(at, trial.step, first) &&
      isPartOf(placeAround(at.tree, first.name, state.place), trial.place),
  )
}

const isFirst = (at: StepGround, name: string, first: Step): boolean =>
  name === first.name || furtherOf({ ...at, step: stepOf(at.tree, name) })?.name === first.name

/** Passed over, with the outcome of the trial it would have read, where that has no result. */
export function frontOfFurther(at: StepGround): Transition[] | null {
  const first = furtherOf(at)
  if (first === null) return null
  const outcome = (state: State): Outcome =>
    group(at, state, first).find(([, trial]) => trial.step === first.name)?.[1].outcome ?? 'not_given'
  const pass: Change = (state, event) =>
    addRows(at, state, event, [{ step: at.step, place: state.place, outcome: outcome(state) }], {
      outcome: 'not_given',
    })
  const none = (state: State) => !['done', 'limit'].includes(outcome(state))
  return at.ways.map((way) =>
    atOnce(
      way.target,
      (state) => none(state) && way.when?.(state) !== false,
      both(both(pass, leaving), way.change),
    ),
  )
}

/** A void here takes back the whole trial: it is given again from its first step while that is allowed. */
export function voidWithParent(
  at: StepGround,
  law: Law,
  cause: (event: Happened) => VoidCause,
): Transition[] {
  const first = furtherOf(at)
  if (first === null) return []
  const voids = (state: State) => voidsBefore(state, first, state.place)
  const mayRepeat = (state: State) => first.voids === null || voids(state) < first.voids
  const breaks: Change = (state, event) => {
    const why = voidBy(event, { ...cause(event), valueSeen: true })
    let { trials } = state
    const members = group(at, state, first)
    for (const [index, trial] of members) {
      trials = replaced(trials, index, { ...trial, status: 'void', outcome: null, void: why })
    }
    if (state.flight) trials = grow(trials, { ...state.flight, status: 'void', outcome: null, void: why })
    const parent = members.find(([, { step }]) => step === first.name)?.[1]
    return {
      trials,
      place: placeAround(at.tree, first.name, state.place),
      flight: null,
      running: false,
      visit: {
        step: first.name,
        place: parent?.place ?? state.place,
        attempts: parent?.attempt ?? 0,
        voids: voids(state) + 1,
        state: '',
        local: {},
      },
    }
  }
  const noMore: Change = (state, event) => {
    const read = group(at, state, first).map(([, { step, place }]) => ({
      step: stepOf(at.tree, step),
      place,
    }))
    const due = [...read, { step: at.step, place: state.place }].map((each) => ({ ...each, outcome: null }))
    const broken = { ...state, ...breaks(state, event) }
    return { ...broken, ...addRows(at, broken, event, due, { outcome: 'not_given' }), place: state.place }
  }
  const when = (again: boolean): Law => ({
    ...law,
    refuses: misplaced,
    when: (state, event) => law.when?.(state, event) !== false && mayRepeat(state) === again,
  })
  return [transition(first.name, when(true), breaks), ...along(at.ways, when(false), both(noMore, leaving))]
}
