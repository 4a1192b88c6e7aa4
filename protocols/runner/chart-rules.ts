/** The part of the chart that is one rule: judged where it stands, asked about where the file says so. */
import type { Rule } from '../language/model.ts'
import { dueAfter, endsDetour, type Ground, placeAround } from './due.ts'
import { grow } from './grown.ts'
import { samePlace } from './places.ts'
import type { Cut, Happened, State } from './state.ts'
import {
  along,
  atOnce,
  both,
  type Change,
  type ChartNode,
  entering,
  type Transition,
  type Way,
} from './transitions.ts'
import { addRows } from './trials.ts'
import { afterNode, END, stateOf } from './tree.ts'
import type { AdministrationView, Refusal } from './view.ts'
import { waysAfter } from './ways.ts'
import { refuse } from './refuse.ts'

const JUDGED = 'judged'
const ASKING = 'asking'

export const askingOf = (rule: string): string => stateOf(rule, ASKING)

type Did = AdministrationView['rules'][number]['did']

export function ruleNode(ground: Ground, rule: Rule): ChartNode {
  const judge: Change = (state) => {
    const verdict = ground.judging.holds(state, rule.when, state.place)
    const { place, trials } = state
    return {
      at: rule.name,
      verdict,
      judged: grow(state.judged, { rule: rule.name, place, verdict, trials: trials.length }),
    }
  }
  const ways = waysAfter(ground, rule.name)
  const passOn = ways.map((way) =>
    onceJudged(way, (state) => state.verdict !== true, note(rule, onlyIfUnclear)),
  )
  const holds = rule.confirm === null ? applied(ground, rule, ways) : asks(rule)
  return {
    id: rule.name,
    initial: entering(JUDGED, judge),
    states: {
      [JUDGED]: { id: stateOf(rule.name, JUDGED), always: [...passOn, ...holds] },
      ...(rule.confirm !== null && { [ASKING]: askingNode(ground, rule, ways) }),
    },
  }
}

function onceJudged(way: Way, when: (state: State) => boolean, change: Change): Transition {
  return atOnce(way.target, (state) => when(state) && way.when?.(state) !== false, both(change, way.change))
}

/** A rule whose condition has no answer does nothing, and says so; one that doesn't hold says nothing. */
const onlyIfUnclear = (state: State): Did | null => (state.verdict === null ? 'nothing' : null)

function note(rule: Rule, what: (state: State) => Did | null): Change {
  return (state) => {
    const did = what(state)
    return did === null ? {} : { rules: grow(state.rules, { rule: rule.name, place: state.place, did }) }
  }
}

function asks(rule: Rule): Transition[] {
  return [
    atOnce(
      askingOf(rule.name),
      null,
      note(rule, () => 'asked'),
    ),
  ]
}

const cutBy = ({ place, trials }: State, { name }: Rule, now: State['trials']): Cut => ({
  rule: name,
  place,
  rows: now.items.slice(trials.length, now.length).map(({ id }) => id),
})

/** Without an end it only notes; with one, what it cuts off gets rows, credited where the rule says so. */
function applies(ground: Ground, rule: Rule): Change {
  const credits = Object.keys(rule.credit).length > 0
  const notes = note(rule, () => (rule.end === null ? 'noted' : credits ? 'credited' : 'ended'))
  if (rule.end === null) return notes
  const section = rule.end === 'test' ? null : rule.end
  return both(
    (state, event) => {
      const due = dueAfter(ground, state, rule.name, { section, laterPasses: true })
      const rows = addRows(ground, state, event, due, { outcome: 'credited', credit: rule.credit })
      return { ...rows, cuts: grow(state.cuts, cutBy(state, rule, rows.trials ?? state.trials)) }
    },
    both(notes, (state) => ({
      returning: null,
      place: section === null ? {} : placeAround(ground.tree, section, state.place),
    })),
  )
}

/** Where an applied rule leads: behind the section it ends, to the end, or on. */
function waysApplied(ground: Ground, rule: Rule, ways: readonly Way[]): readonly Way[] {
  if (rule.end === null) return ways
  const target = rule.end === 'test' ? END : afterNode(ground.tree, rule.end)
  const section = rule.end === 'test' ? null : rule.end
  const isLast = (state: State) => endsDetour(ground, state, section) || state.detour?.section === section
  return [
    { when: (state) => state.detour !== null && isLast(state), target: END, change: null },
    { when: null, target, change: null },
  ]
}

function applied(ground: Ground, rule: Rule, ways: readonly Way[]): Transition[] {
  const change = applies(ground, rule)
  return waysApplied(ground, rule, ways).map((way) => onceJudged(way, () => true, change))
}

const applying = ({ body }: Happened) => 'apply' in body && body.apply === true

/** Waits for the examiner's answer to what the rule asks. */
function askingNode(ground: Ground, rule: Rule, ways: readonly Way[]): ChartNode {
  const refuses = (state: State, { body }: Happened): Refusal | null => {
    if (!('rule' in body) || body.rule !== rule.name) {
      return refuse('wrong_rule', { at: rule.name })
    }
    return samePlace(body.place as State['place'], state.place)
      ? null
      : refuse('wrong_place', { rule: rule.name })
  }
  return {
    id: askingOf(rule.name),
    on: {
      ruled: [
        ...along(
          waysApplied(ground, rule, ways),
          { when: (_state, event) => applying(event), refuses },
          applies(ground, rule),
        ),
        ...along(
          ways,
          { when: (_state, event) => !applying(event), refuses },
          note(rule, () => 'nothing'),
        ),
      ],
    },
  }
}
