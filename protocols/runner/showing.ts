/** The administration as a screen may know it: plain data, texts in the words it is given by. */
import type { Expression } from '../language/expressions/types.ts'
import type { Rule, Section, Text } from '../language/model.ts'
import { textOf, wordingFor } from '../language/words.ts'
import { scopeAt } from '../scoring/scope.ts'
import { type Administration } from './administration.ts'
import { unexplained } from './afterwards.ts'
import { askingAtHand, choosingAtHand, stepAtHand } from './at-hand.ts'
import {
  dueAfter,
  dueAt,
  type Ground,
  loopOf,
  placeOfPass,
  sectionChart,
  sectionKind,
  sectionMoment,
} from './due.ts'
import type { Place } from './events.ts'
import { listOf } from './grown.ts'
import { offersOf } from './offers.ts'
import { showFigure } from './showing-figure.ts'
import { givenOnSheet, showSheet } from './showing-sheet.ts'
import { pendingOf, raterOf } from './raters.ts'
import { phaseOf } from './refusals.ts'
import type { State } from './state.ts'
import { missingOf } from './taking-up.ts'
import { spotOf, stepOf } from './tree.ts'
import { seenFrom } from './unseen.ts'
import type { AdministrationView, Pass, StepView, Trial } from './view.ts'

/** Words of the protocol as seen from a place. */
type Say = (text: Text, place: Place) => string

function sayer({ protocol, judging }: Ground, state: State): Say {
  const wording = wordingFor(protocol, state.opened?.protocol.wording ?? null)
  return (text, place) => textOf(protocol, wording, text, scopeAt(judging.standing(state), place))
}

export function show(ground: Ground, administration: Administration, id: string): AdministrationView {
  const { snapshot } = administration
  const state = snapshot.context
  const say = sayer(ground, state)
  const phase = phaseOf(snapshot)
  return {
    id,
    protocol: {
      id: ground.protocol.id,
      version: ground.protocol.version,
      title: say(ground.protocol.title, {}),
      wording: state.opened?.protocol.wording ?? null,
      from: state.opened?.protocol.from ?? 'library',
    },
    rehearsal: state.opened?.rehearsal ?? false,
    client: state.client,
    facts: state.facts,
    examiner: state.examiner,
    on: state.on,
    phase: phase === 'unopened' ? 'preparing' : (phase as AdministrationView['phase']),
    because: state.because,
    firstHand: firstHand(ground, state),
    step: showStep(ground, state, phase, say),
    sheet: showSheet(ground, state, phase, {
      say,
      passesIn: (place, around) => passesIn(ground, state, place, around),
    }),
    offers: offersOf(administration),
    asking: asking(ground, administration, say),
    choosing: choosing(ground, administration),
    unexplained: unexplained(state).map((trial) => trial.id),
    voidReasons: ground.protocol.happenings
      .filter(({ becomes }) => becomes === 'void')
      .map(({ name, seen }) => ({ name, seen: say(seen, state.place) })),
    lastAt: administration.past?.recorded.at ?? '',
    trials: seenFrom(ground, { node: state.at, place: state.place }, trialsOf(state)),
    ...told(ground, state, say),
    raters: ratersOf(ground, state),
    precautions: ground.protocol.precautions.map((each) => ({
      id: each.id,
      ask: say(each.ask, {}),
      why: each.why && say(each.why, {}),
    })),
    prepared: showPrepared(state),
    progress: progress(ground, state),
  }
}

/** Trials in the order they were given, the one in flight last. */
const trialsOf = ({ trials, flight }: State): Trial[] => [...listOf(trials), ...(flight ? [flight] : [])]

/** What a rule says of what it did; nothing where that was taken back by giving what was missing. */
const textOfRule = (rule: Rule, did: AdministrationView['rules'][number]['did']): Text | null =>
  did === 'taken_up' ? null : did === 'asked' ? rule.confirm : rule.note

/** What was told, judged and put right along the way. */
function told(ground: Ground, state: State, say: Say) {
  return {
    rules: listOf(state.rules).map((each) => {
      const { node } = spotOf(ground.tree, each.rule)
      const text = node.node === 'rule' ? textOfRule(node, each.did) : null
      return { ...each, text: text === null ? '' : say(text, each.place) }
    }),
    deviations: [...listOf(state.deviations)],
    corrections: [...listOf(state.corrections)],
    stops: [...listOf(state.stops)],
    pauses: [...listOf(state.pauses)],
    remarks: [...listOf(state.remarks)],
    note: state.note,
    wouldDiffer: state.wouldDiffer,
    missing: missingOf(ground, state),
  }
}

function showPrepared({ prepared }: State): AdministrationView['prepared'] {
  if (prepared === null) return null
  const { kind: _kind, ...answers } = prepared
  return answers
}

/** The hand that comes first, as recorded; before that, as the client's facts decide it. */
function firstHand(ground: Ground, state: State): AdministrationView['firstHand'] {
  const sections = [...ground.tree.spots.values()].flatMap(({ node }) =>
    node.node === 'section' && node.fields.in === 'hands' ? [node] : [],
  )
  const [first] = sections
  if (first === undefined || state.facts === null) return null
  const recorded = listOf(state.orders).find(({ section }) => sections.some(({ name }) => name === section))
  const chance = { drawn: false }
  const drawn = <Of>(of: Of): Of => {
    chance.drawn = true
    return of
  }
  const moment = sectionMoment(ground, state, first, {})
  const order =
    recorded ?? sectionChart(first).order(moment, { random: () => drawn(0), earlier: () => drawn([]) })
  const hand = order?.items[0]
  return order === null || hand === undefined || chance.drawn ? null : { hand, rule: order.rule }
}

function showStep(ground: Ground, state: State, phase: string, say: Say): StepView | null {
  const here = stepAtHand(ground, state, phase)
  if (here === null) return null
  const node = stepOf(ground.tree, here.name)
  const { place, face, ...named } = here
  return {
    ...named,
    place,
    passes: passesAt(ground, state, place),
    ...levelsAt(ground, state, place),
    text: node.text && say(node.text, place),
    maySay: node.maySay.map((text) => say(text, place)),
    figure: showFigure(ground, node, place),
    happenings: ground.protocol.happenings.map((each) => ({
      name: each.name,
      seen: say(each.seen, place),
      do: each.do && say(each.do, place),
      becomes: each.becomes,
      key: each.key,
    })),
    face: face(),
  }
}

const passesAt = (ground: Ground, state: State, place: Place): Pass[] =>
  passesIn(ground, state, place, spotOf(ground.tree, state.at).around)

function passesIn(ground: Ground, state: State, place: Place, around: readonly Section[]): Pass[] {
  const withPasses = around.filter((section) => sectionKind(section).chart !== null)
  return withPasses.map((section): Pass => {
    const { loop, list, numbered } = loopOf(ground, section)
    const pass = place[loop]
    const moment = sectionMoment(ground, state, section, place)
    const all = numbered ? [] : sectionChart(section).due({ ...moment, pass: null })
    return {
      loop,
      list,
      id: typeof pass === 'string' ? pass : null,
      number: typeof pass === 'number' ? pass : numbered ? moment.turn : all.indexOf(String(pass)) + 1,
      of: sectionChart(section).of(moment),
      text: list === null ? null : itemText(ground, state, list, String(pass)),
    }
  })
}

/** The levels that the innermost ladder around the step has given before the one at hand. */
function levelsAt(ground: Ground, state: State, place: Place): Pick<StepView, 'levels'> {
  const { around } = spotOf(ground.tree, state.at)
  const section = around.findLast((each) => sectionKind(each).found !== null)
  const condition = section?.fields[sectionKind(section).found?.judgedBy ?? '']
  if (section === undefined || condition === undefined) return {}
  const { list } = loopOf(ground, section)
  const moment = sectionMoment(ground, state, section, place)
  const before = moment.path().slice(0, -1)
  return {
    levels: before.map((level, index) => ({
      id: String(level),
      text: list === null ? null : itemText(ground, state, list, String(level)),
      accepted: ground.judging.holds(
        state,
        condition as Expression,
        placeOfPass(ground, section, moment.around, level, index + 1),
      ),
    })),
  }
}

/** Those who rate, where one of them may do so another day. */
function ratersOf(ground: Ground, state: State): AdministrationView['raters'] {
  if (ground.protocol.raters?.later !== true) return []
  return (ground.protocol.lists.raters ?? []).map(({ id }) => ({
    id,
    text: itemText(ground, state, 'raters', id) ?? id,
    toCome: pendingOf(ground.tree, state.trials, id).length,
    later: listOf(state.ratings)
      .filter(({ rater }) => rater === id)
      .map(({ by, at }) => ({ by, at })),
  }))
}

/** An item's own name for the screen, where its list gives one as `title`. */
function itemText({ protocol }: Ground, state: State, list: string, id: string): string | null {
  const key = `${list}.${id}.title`
  const wording = wordingFor(protocol, state.opened?.protocol.wording ?? null)
  const known = [wording, wordingFor(protocol, null)].some(({ texts }) => Object.hasOwn(texts, key))
  if (known) return textOf(protocol, wording, { key })
  const written = protocol.lists[list]?.find((item) => item.id === id)?.properties.title
  return typeof written === 'string' ? written : null
}

function asking(ground: Ground, administration: Administration, say: Say): AdministrationView['asking'] {
  const here = askingAtHand(ground, administration)
  if (here === null) return null
  const { node } = spotOf(ground.tree, here.rule)
  const confirm = node.node === 'rule' ? node.confirm : null
  return { ...here, text: confirm === null ? '' : say(confirm, here.place) }
}

function choosing(ground: Ground, administration: Administration): AdministrationView['choosing'] {
  const here = choosingAtHand(ground, administration)
  if (here === null) return null
  const texts = here.items.flatMap((item) => {
    const text = itemText(ground, administration.snapshot.context, here.list, item)
    return text === null ? [] : [[item, text] as const]
  })
  return { ...here, items: [...here.items], texts: Object.fromEntries(texts) }
}

function progress(ground: Ground, state: State): AdministrationView['progress'] {
  const { passed, flight, rating } = state
  if (rating !== null) return ratingProgress(ground, state, rating)
  if (!ground.tree.spots.has(state.at)) {
    const all = state.begun ? [] : ground.protocol.steps[0] === undefined ? [] : dueFrom(ground, state)
    return { passed, due: passed + all.length }
  }
  const here = dueAt(ground, state).length + (flight === null ? 0 : 1)
  return {
    passed: passed + givenOnSheet(ground, state),
    due: passed + here + dueAfter(ground, state, state.at, { section: null, laterPasses: true }).length,
  }
}

/** Of what a rater gives after the end: how many grades are there, of all of them. */
function ratingProgress({ tree }: Ground, { trials }: State, rater: string): AdministrationView['progress'] {
  const all = listOf(trials).filter(
    (trial) => trial.status === 'standing' && raterOf(tree, trial) === rater,
  ).length
  return { passed: all - pendingOf(tree, trials, rater).length, due: all }
}

function dueFrom(ground: Ground, state: State) {
  const [first] = ground.protocol.steps
  if (first === undefined) return []
  const beginning = { ...state, at: first.name }
  return [
    ...dueAt(ground, beginning),
    ...dueAfter(ground, beginning, first.name, { section: null, laterPasses: true }),
  ]
}
