/**
 * How every transition of the chart is made: with the law that says when it is meant and why it is refused, and
 * the change it makes. Nothing else writes to the chart's context, and each transition marks its event as taken.
 */
import {
  assign,
  type EventObject,
  type ParameterizedObject,
  type ProvidedActor,
  raise,
  type StateNodeConfig,
} from 'xstate'
import type { Happened, State } from './state.ts'
import type { Refusal } from './view.ts'

export interface Law {
  /** Which of several transitions for one event this is; the others' must not hold with it. */
  readonly when?: (state: State, event: Happened) => boolean
  readonly refuses?: (state: State, event: Happened) => Refusal | null
  /** What the main key does. */
  readonly main?: boolean
  /** Not the examiner's to do: it isn't offered. */
  readonly automatic?: boolean
  /** True while it can't be done yet: shown, not offered. */
  readonly waits?: (state: State) => boolean
}

export type Change = (state: State, event: Happened) => Partial<State>

export type ChartNode = StateNodeConfig<
  State,
  Happened,
  ProvidedActor,
  ParameterizedObject,
  ParameterizedObject,
  string,
  string,
  unknown,
  EventObject,
  Law
>
export type Transition = Extract<NonNullable<ChartNode['always']>, { readonly guard?: unknown }>

/** Where to go from a node, and what else happens on that way; the last way of a list is always open. */
export interface Way {
  readonly when: ((state: State) => boolean) | null
  readonly target: string
  readonly change: Change | null
}

const changes = (change: Change) =>
  assign<State, Happened, undefined, Happened, ProvidedActor>(({ context, event }) => change(context, event))

const taken: Change = (_state, { id }) => ({ last: id })

/** First one change, then the other. */
export const both =
  (first: Change, second: Change | null): Change =>
  (state, event) => {
    const change = first(state, event)
    return second === null ? change : { ...change, ...second({ ...state, ...change }, event) }
  }

/** `target`: id of a state, or null to stay. `raises`: an event of the chart's own that follows at once. */
export function transition(target: string | null, law: Law, change: Change, raises?: string): Transition {
  const { when, refuses } = law
  return {
    ...(target !== null && { target: `#${target}`, reenter: true }),
    ...((when || refuses) && {
      guard: ({ context, event }: { context: State; event: Happened }) =>
        when?.(context, event) !== false && (refuses?.(context, event) ?? null) === null,
    }),
    actions: [
      changes(both(change, taken)),
      ...(raises === undefined
        ? []
        : [raise(({ event }: { event: Happened }) => ({ ...event, type: raises }))]),
    ],
    meta: law,
  } as Transition
}

/** The same transition along each of the ways that lead on. */
export function along(ways: readonly Way[], law: Law, change: Change): Transition[] {
  return ways.map((way, index) => {
    const earlier = ways.slice(0, index)
    return transition(
      way.target,
      {
        ...law,
        when: (state, event) =>
          law.when?.(state, event) !== false &&
          way.when?.(state) !== false &&
          earlier.every(({ when }) => when?.(state) === false),
      },
      both(change, way.change),
    )
  })
}

/** What is done on entering a compound state by its front door; not when history leads back into it. */
export const entering = (target: string, change: Change): NonNullable<ChartNode['initial']> => ({
  target,
  actions: changes(change),
})

/** Done whenever a state is entered: for states that the chart passes through and never rests in. */
export const onEntry = (change: Change): NonNullable<ChartNode['entry']> => changes(change)

/** Taken at once where it holds. */
export function atOnce(
  target: string,
  when: ((state: State) => boolean) | null,
  change: Change | null,
): Transition {
  return {
    target: `#${target}`,
    reenter: true,
    ...(when && { guard: ({ context }: { context: State }) => when(context) }),
    ...(change && { actions: changes(change) }),
  } as Transition
}
