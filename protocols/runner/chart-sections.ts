/** The part of the chart that is one section of the file: an order where it takes one, then pass after pass. */
import type { Closing, Outcome, Section } from '../language/model.ts'
import type { PassId, SectionMoment } from './chart-parts.ts'
import {
  closedAs,
  dueAfter,
  dueAt,
  dueInPass,
  endsDetour,
  type Ground,
  isGiven,
  loopOf,
  placeAround,
  placeOfPass,
  type Reach,
  sectionChart,
  sectionKind,
  sectionMoment,
} from './due.ts'
import { turnKey } from '../language/passes.ts'
import { grow } from './grown.ts'
import { isPartOf, samePlace } from './places.ts'
import { isOverRaters } from './raters.ts'
import type { Happened, State } from './state.ts'
import {
  atOnce,
  both,
  type Change,
  type ChartNode,
  entering,
  onEntry,
  type Law,
  type Transition,
  transition,
} from './transitions.ts'
import { addRows, reasonIn, stand } from './trials.ts'
import { END, stateOf, turnOf } from './tree.ts'
import type { Refusal } from './view.ts'
import { waysAfter } from './ways.ts'
import { refuse } from './refuse.ts'

export const SETTLE_HAND = '=settle_hand'

/** Beside states that are called as the file calls its steps: no name has a colon. */
export const ORDERING = ':ordering'
export const TURN = ':turn'

export const orderingOf = (section: string): string => stateOf(section, ORDERING)

export function sectionNode(
  ground: Ground,
  section: Section,
  nodes: Readonly<Record<string, ChartNode>>,
): ChartNode {
  const ordered = sectionChart(section).ordered(section, ground.protocol.draws)
  const leave: Change = (state) => ({ place: placeAround(ground.tree, section.name, state.place) })
  return {
    id: section.name,
    initial: entering(
      ordered ? ORDERING : TURN,
      both(leave, () => ({ at: section.name })),
    ),
    states: {
      ...(ordered && { [ORDERING]: orderingNode(ground, section) }),
      [TURN]: turnNode(ground, section, leave),
      ...nodes,
    },
    on: {
      closed: closesPass(ground, section),
      put_off: putsOff(ground, section),
      [SETTLE_HAND]: settlesHand(ground, section),
    },
  }
}

/** Waits for the order, which the host records by itself unless the examiner chooses it. */
export function orderingNode(ground: Ground, section: Section): ChartNode {
  const chart = sectionChart(section)
  const refuses = (state: State, { body }: Happened): Refusal | null => {
    if (body.kind !== 'ordered' || !('items' in body)) return null
    if (body.section !== section.name) return refuse('wrong_section', { at: section.name })
    const moment = sectionMoment(ground, state, section, state.place)
    if (!samePlace(body.place as State['place'], moment.around)) {
      return refuse('wrong_place', { section: section.name })
    }
    return chart.refuses(moment, body.items as string[])
  }
  const orders: Change = (state, event) => {
    const { body } = event
    if (body.kind !== 'ordered' || !('items' in body)) return {}
    const moment = sectionMoment(ground, state, section, state.place)
    const leftOut = chart
      .leftOut(moment)
      .flatMap((item) => dueInPass(ground, state, section, moment.around, item))
    return {
      orders: grow(state.orders, {
        section: section.name,
        place: moment.around,
        items: body.items as string[],
        rule: String(body.rule),
      }),
      ...addRows(ground, state, event, leftOut, { outcome: 'absent' }),
    }
  }
  return {
    id: orderingOf(section.name),
    on: { ordered: [transition(turnOf(section.name), { refuses }, orders)] },
  }
}

/** Before each pass: which one is next, or what comes after the section. */
function turnNode(ground: Ground, section: Section, leave: Change): ChartNode {
  const around = (state: State) => placeAround(ground.tree, section.name, state.place)
  const closed = (state: State): Outcome | null =>
    state.next === null ? null : closedAs(state, section, state.next)
  const { loop } = loopOf(ground, section)
  const turn = (state: State): number => Number(state.place[turnKey(loop)] ?? 0)
  const advance: Change = (state) =>
    state.next === null
      ? {}
      : { place: placeOfPass(ground, section, around(state), state.next, turn(state) + 1) }
  const passOver: Change = (state, event) => {
    if (state.next === null) return {}
    const due = dueInPass(ground, state, section, around(state), state.next)
    return addRows(ground, state, event, due, { outcome: closed(state) ?? 'not_given' })
  }
  const first = section.steps[0]?.name ?? turnOf(section.name)
  const over = waysAfter(ground, section.name).map((way) =>
    atOnce(way.target, way.when, way.change === null ? leave : both(leave, way.change)),
  )
  return {
    id: turnOf(section.name),
    entry: onEntry(judgesTurn(ground, section)),
    always: [
      atOnce(END, (state) => endsDetour(ground, state, section.name), null),
      atOnce(turnOf(section.name), (state) => closed(state) !== null, both(passOver, advance)),
      atOnce(first, (state) => state.next !== null, advance),
      atOnce(END, ({ detour }) => detour?.section === section.name, null),
      ...over,
    ],
  }
}

/** Settles the next pass; a decision that rests on a condition is remembered for corrections. */
function judgesTurn(ground: Ground, section: Section): Change {
  const chart = sectionChart(section)
  const { conditions } = sectionKind(section)
  const isConditional = conditions.some((key) => section.fields[key] !== undefined)
  return (state) => {
    if (endsDetour(ground, state, section.name)) return {}
    const moment = sectionMoment(ground, state, section, state.place)
    const judged = chart.next(moment)
    const next = state.detour === null ? judged : notGiven(ground, state, moment, judged)
    const { around, pass, turn } = moment
    const place = pass === null ? around : placeOfPass(ground, section, around, pass, turn)
    const unclear = chart.unclear(moment, judged).map((item) => ({
      rule: section.name,
      place:
        item === null ? around : placeOfPass(ground, section, around, item, item === pass ? turn : turn + 1),
      did: 'nothing' as const,
    }))
    return {
      next,
      ...(isConditional && {
        judged: grow(state.judged, {
          rule: section.name,
          place,
          verdict: judged,
          trials: state.trials.length,
        }),
      }),
      rules: unclear.reduce((all, each) => grow(all, each), state.rules),
    }
  }
}

/** The next pass of which nothing was given yet: what is missing is given, and no more. */
function notGiven(ground: Ground, state: State, moment: SectionMoment, from: PassId | null): PassId | null {
  const { section, around } = moment
  let next = from
  while (next !== null && isGiven(ground, state, section, around, next)) {
    next = sectionChart(section).next({ ...moment, pass: next })
  }
  return next
}

/**
 * The trial in flight ends with this outcome, and so does one that waits behind a repeated practice; what is
 * over and done keeps its own.
 */
function endTrial(ground: Ground, outcome: Outcome): Change {
  const ends: Change = (state, event) => {
    if (state.flight === null) return {}
    return state.flight.outcome === 'done'
      ? stand(ground, state, null, '')
      : stand(ground, state, outcome, reasonIn(event))
  }
  return both(
    ends,
    both(({ returning }) => (returning?.flight ? { flight: returning.flight } : {}), ends),
  )
}

/** Rows for what the end of a pass, of a section or of the test cuts off, the step at hand included. */
export function cutOff(ground: Ground, reach: Reach, outcome: Outcome): Change {
  return (state, event) => {
    if (!ground.tree.spots.has(state.at)) return {}
    const due = [...dueAt(ground, state), ...dueAfter(ground, state, state.at, reach)]
    const rows: Change = (now) => addRows(ground, now, event, due, { outcome })
    return both(endTrial(ground, outcome), rows)(state, event)
  }
}

/** The pass at hand ends here; the section takes its next turn from it. */
const endPass =
  (ground: Ground, section: Section, outcome: Closing | 'stopped' | 'pending'): Change =>
  (state, event) => {
    const { around, pass, turn } = sectionMoment(ground, state, section, state.place)
    const cut = cutOff(ground, { section: section.name, laterPasses: false }, outcome)(state, event)
    if (pass === null) return { ...cut, returning: null }
    return {
      ...cut,
      returning: null,
      place: placeOfPass(ground, section, around, pass, turn),
      ...(section.fields.in === 'hands' &&
        outcome !== 'pending' && { closedHands: { ...state.closedHands, [pass]: outcome } }),
    }
  }

const outcomeOf = ({ body }: Happened) => ('outcome' in body ? body.outcome : 'not_given') as Closing

/** A whole pass is closed (`hand`, an item): what was due in it gets rows, the rest goes on. */
function closesPass(ground: Ground, section: Section): Transition[] {
  const { loop } = loopOf(ground, section)
  const refuses = (state: State, { body }: Happened): Refusal | null => {
    if (!('place' in body) || state.place[loop] === undefined) return refuse('no_pass')
    const place = body.place as State['place']
    const fits = isPartOf(place, state.place) && place[loop] === state.place[loop]
    return fits ? null : refuse('wrong_place', { section: section.name })
  }
  const law: Law = { when: (_state, { body }) => 'what' in body && body.what === loop, refuses }
  return [
    transition(turnOf(section.name), law, (state, event) =>
      endPass(ground, section, outcomeOf(event))(state, event),
    ),
  ]
}

const raterIn = ({ body }: Happened): string => ('rater' in body ? String(body.rater) : '')

/** The rater at hand rates another day, here and in all that is still to come. */
function putsOff(ground: Ground, section: Section): Transition[] {
  if (ground.protocol.raters?.later !== true || !isOverRaters(section)) return []
  const refuses = (state: State, event: Happened): Refusal | null =>
    state.place[section.name] === raterIn(event) ? null : refuse('wrong_place', { section: section.name })
  const change: Change = (state, event) => ({
    ...endPass(ground, section, 'pending')(state, event),
    putOff: [...state.putOff, raterIn(event)],
  })
  return [transition(turnOf(section.name), { waits: ({ running }) => running, refuses }, change)]
}

/** The stop ends the hand at hand: its section goes on with the other one. */
function settlesHand(ground: Ground, section: Section): Transition[] {
  if (section.fields.in !== 'hands') return []
  return [transition(turnOf(section.name), { automatic: true }, endPass(ground, section, 'stopped'))]
}
