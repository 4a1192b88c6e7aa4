/**
 * The phase in which a rater gives another day what is still to come: trial after trial in the order of the test, on
 * the faces of their own steps. What the test led to is settled by then, so no rule is judged and nothing is repeated.
 */
import type { Step } from '../language/model.ts'
import { told } from './afterwards.ts'
import { closeAs, closeStep, closingOf } from './befalls.ts'
import { interruption, movesOf } from './chart-steps.ts'
import { phase } from './chart-waiting.ts'
import { type Ground, isTrial } from './due.ts'
import { grow, type Grown, listOf } from './grown.ts'
import { samePlace } from './places.ts'
import { isPending, pendingOf, ratersAround } from './raters.ts'
import { refuse } from './refuse.ts'
import type { State } from './state.ts'
import { type StepGround, stepKind } from './step-ground.ts'
import { atOnce, type Change, type ChartNode, entering, onEntry, type Transition } from './transitions.ts'
import { startVisit } from './trials.ts'
import { stateOf } from './tree.ts'
import type { Trial } from './view.ts'

/** Where the next trial is found. No name of a file has a colon or a `=`. */
const NEXT = '=rating:next'
/** Id of a step's state here, beside the one that it has in the test. */
const idOf = (step: string): string => `=rating:${step}`

const nextOf = ({ tree }: Ground, { rating, trials }: State): Trial | null =>
  rating === null ? null : (pendingOf(tree, trials, rating)[0] ?? null)

/** From the end of the test, and from there again until all is given. */
export const beginsRating = (ground: Ground): Transition =>
  told(
    'rating_begun',
    {
      waits: ({ trials }) => pendingOf(ground.tree, trials, null).length === 0,
      refuses: ({ trials }, { rater }) =>
        pendingOf(ground.tree, trials, rater).length > 0 ? null : refuse('nothing_to_rate', { rater }),
      change: ({ ratings }, { rater }, { at, user }) => ({
        rating: rater,
        ratings: grow(ratings, { rater, at, by: user }),
      }),
    },
    phase('rating'),
  )

export function ratingNode(ground: Ground): ChartNode {
  const steps = ground.tree.steps.filter(
    (step) => isTrial(step) && ratersAround(ground.tree, step.name).length > 0,
  )
  const found = steps.map((step) =>
    atOnce(
      idOf(step.name),
      (state) => nextOf(ground, state)?.step === step.name,
      (state) => ({ place: nextOf(ground, state)?.place ?? state.place }),
    ),
  )
  const nowhere: Change = () => ({ at: NEXT, visit: null, place: {}, flight: null, running: false })
  const end = (isAll: boolean): Transition =>
    told(
      'rating_ended',
      {
        when: (state) => (nextOf(ground, state) === null) === isAll,
        waits: ({ running }) => running,
        main: isAll,
        change: (state, _body, event) => ({ ...nowhere(state, event), rating: null }),
      },
      phase('finished'),
    )
  return {
    initial: 'next',
    states: {
      next: { id: NEXT, entry: onEntry(nowhere), always: found, on: { rating_ended: [end(true)] } },
      ...Object.fromEntries(steps.map((step) => [step.name, stepHere(ground, step)])),
    },
    on: { rating_ended: [end(false)] },
  }
}

/** A step by its kind's own chart; it can be closed, too, such as for a recording that shows nothing. */
function stepHere(ground: Ground, step: Step): ChartNode {
  const kind = stepKind(step)
  const at: StepGround = {
    ...ground,
    step,
    kind,
    id: idOf(step.name),
    ways: [{ when: null, target: NEXT, change: inItsPlace }],
  }
  const states = Object.entries(kind.chart.states).map(([name, state]): [string, ChartNode] => [
    name,
    {
      id: stateOf(at.id, name),
      on: { ...movesOf(at, name, state), interrupted: interruption(at, state) },
    },
  ])
  return {
    id: at.id,
    initial: entering(kind.chart.initial, (state) => ({
      at: step.name,
      visit: startVisit(state, step, kind.chart.initial),
      flight: null,
      running: false,
    })),
    states: Object.fromEntries(states),
    on: { closed: closeStep(at, closesPending(at)) },
  }
}

/** Where the row stands that waits for the trial at hand; -1 where none does. */
const waitingRow = ({ trials, place }: State, step: string): number =>
  listOf(trials).findIndex(
    (trial) => isPending(trial) && trial.step === step && samePlace(trial.place, place),
  )

/** The newest trial takes the place of the row at `index`, which is dropped where `instead` says so. */
function moved(trials: Grown<Trial>, index: number, instead: boolean): Grown<Trial> {
  const items = [...listOf(trials)]
  items.splice(index, instead ? 1 : 0, ...items.splice(-1))
  return { items, length: items.length }
}

/** What was given stands where its row had waited: the order of the test stays. */
const inItsPlace: Change = (state) => {
  const index = state.visit === null ? -1 : waitingRow(state, state.visit.step)
  return index < 0 ? {} : { trials: moved(state.trials, index, true) }
}

/** The row that waits is closed with an outcome of its own. */
const closesPending =
  (at: StepGround): Change =>
  (state, event) => {
    const closes = closeAs(at, closingOf)
    if (state.flight !== null) return closes(state, event)
    const index = waitingRow(state, at.step.name)
    const items = listOf(state.trials).filter((_trial, each) => each !== index)
    const closed = { ...state, ...closes({ ...state, trials: { items, length: items.length } }, event) }
    return { trials: moved(closed.trials, index, false), made: closed.made }
  }
