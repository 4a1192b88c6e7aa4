/**
 * Walks all paths of a protocol by values: every outcome that the file can tell apart at every step, in the order of
 * length, so that the first way found to a step is a shortest one. States that go on alike are walked once.
 */
import { CLOSINGS, type Protocol } from '../language/model.ts'
import type { EventBody, Place, Recorded } from '../runner/events.ts'
import { listOf } from '../runner/grown.ts'
import { type Administration, type Runner, runnerFor } from '../runner/index.ts'
import type { AdministrationView, SheetView, StepView } from '../runner/view.ts'
import { outlineOf } from '../scoring/outline.ts'
import { scoreAll } from '../scoring/scores.ts'
import type { RehearsedEvent, TellingOutcome } from '../steps/kind.ts'
import { CLOCK, type Opened, preparedFor, STARTING } from './opening.ts'
import { type Relevance, relevanceOf } from './relevance.ts'
import { namesOf } from './names-of.ts'
import { type Start, startsOf } from './starts.ts'

export interface Exploration {
  readonly opened: Opened
  readonly user: string
  /** So many states are walked at most. */
  readonly states: number
  /** So many outcomes one after another at most. */
  readonly depth: number
  /** The id of the so-manieth event; UUIDs, each once. */
  idOf(count: number): string
  /** Wall time, RFC 3339, so many ms after the administration was opened. */
  at(ms: number): string
}

/** One outcome on the way: `usual` is the first that the step's kind names. */
interface Taken {
  readonly at: string
  readonly place: Place
  readonly outcome: string
  readonly usual: boolean
}

export interface Way {
  /** What was told of the client and the kit: `usual`, a condition that differs, … */
  readonly start: string
  readonly taken: readonly Taken[]
}

export interface Explored {
  readonly walked: { readonly states: number; readonly deepest: number }
  /** The bound that was met, beyond which nothing is known; null: every path was walked. */
  readonly bound: 'states' | 'depth' | null
  /** Every step of the file with a shortest way to it; where a bound was met, the shortest that was found. */
  readonly steps: readonly { readonly step: string; readonly way: Way | null }[]
  /** Where no outcome leads on. */
  readonly deadEnds: readonly { readonly at: string; readonly way: Way }[]
  /** Scores that had no value at the end of any path. */
  readonly scoresNever: readonly string[]
  /** Rules whose condition never held. */
  readonly rulesNever: readonly string[]
}

interface Stand {
  readonly start: Start
  readonly administration: Administration
  /** ms since it was opened, on the made-up clock too. */
  readonly now: number
  readonly events: number
  readonly depth: number
  readonly from: Stand | null
  readonly taken: Taken | null
}

interface Move {
  readonly taken: Taken
  make(stand: Stand): Stand | null
}

interface Walk {
  readonly protocol: Protocol
  readonly exploration: Exploration
  readonly runner: Runner
  readonly relevance: Relevance
  readonly known: Set<string>
  readonly ways: Map<string, Stand>
  readonly produced: Set<string>
  readonly fired: Set<string>
  /** What was met at each step, by its name. */
  readonly outcomes: Map<string, Set<string>>
  readonly deadEnds: Stand[]
  deepest: number
  /** Outcomes taken on single paths. */
  followed: number
  bound: Explored['bound']
}

export function explore(protocol: Protocol, exploration: Exploration): Explored {
  const walk: Walk = {
    protocol,
    exploration,
    runner: runnerFor(protocol),
    relevance: relevanceOf(protocol),
    known: new Set(),
    ways: new Map(),
    produced: new Set(),
    fired: new Set(),
    outcomes: new Map(),
    deadEnds: [],
    deepest: 0,
    followed: 0,
    bound: null,
  }
  const firsts = startsOf(protocol)
    .map((start) => opened(walk, start))
    .filter((first) => first !== null)
  for (const [index, first] of firsts.entries()) {
    const left = exploration.states - walk.known.size
    const part = index < firsts.length - 1 ? Math.ceil(left / 2) : left
    follow(walk, first, () => null)
    walkFrom(walk, first, walk.known.size + part)
  }
  for (const first of firsts) followScores(walk, first)
  const { steps, rules, scores } = namesOf(protocol)
  return {
    walked: { states: walk.known.size, deepest: walk.deepest },
    bound: walk.bound,
    steps: steps.map((name) => {
      const stand = walk.ways.get(name)
      return { step: name, way: stand === undefined ? null : wayTo(stand) }
    }),
    deadEnds: walk.deadEnds.map((stand) => ({
      at: stand.administration.snapshot.context.at,
      way: wayTo(stand),
    })),
    scoresNever: scores.filter((name) => !walk.produced.has(name)),
    rulesNever: rules.filter((name) => !walk.fired.has(name)),
  }
}

/** `most`: where walking from this start ends, so that others have their turn. */
function walkFrom(walk: Walk, first: Stand, most: number): void {
  const { exploration } = walk
  const waiting = [first]
  for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
    if (walk.known.size >= most) {
      walk.bound ??= 'states'
      return
    }
    if (next.depth >= exploration.depth) {
      walk.bound ??= 'depth'
      continue
    }
    waiting.push(...onward(walk, next))
  }
}

/** States after this one that were never met before. */
function onward(walk: Walk, stand: Stand): readonly Stand[] {
  const view = walk.runner.view(stand.administration, walk.exploration.idOf(0))
  if (view.phase !== 'giving') return []
  const reached = movesOf(walk, view, stand)
    .map((move) => move.make(stand))
    .filter((next) => next !== null)
  if (reached.length === 0) walk.deadEnds.push(stand)
  return reached.filter((next) => isNew(walk, next))
}

/** Which of a step's outcomes is taken each time on one path. */
type Habit = (step: string, time: number) => string | null

/**
 * One whole path on which a step ends as a habit says, and everything else as usual. Scores look back farther than
 * the way on depends: what states have in common for the way may still tell them apart for a score.
 */
function follow(walk: Walk, first: Stand, habit: Habit): void {
  const times = new Map<string, number>()
  let stand: Stand | null = first
  while (stand !== null && stand.depth < walk.exploration.depth) {
    const view = walk.runner.view(stand.administration, walk.exploration.idOf(0))
    note(walk, stand)
    if (view.phase !== 'giving') return
    const here: Stand = stand
    const moves = movesOf(walk, view, here)
    const name = moves[0]?.taken.at ?? ''
    const time = (times.get(name) ?? 0) + 1
    times.set(name, time)
    walk.followed += 1
    const wanted = moves.filter(({ taken }) => taken.outcome === habit(name, time))
    stand = [...wanted, ...moves].reduce<Stand | null>((found, move) => found ?? move.make(here), null)
  }
}

/**
 * For scores that had no value yet: on from the shortest way to each step that they rest on, then with each outcome
 * of such a step always, the first time alone, and every time but the first.
 */
function followScores(walk: Walk, first: Stand): void {
  const { scores, stepsUnder } = outlineOf(walk.protocol)
  const missing = [...scores.values()].filter(({ name }) => !walk.produced.has(name))
  const steps = new Set(missing.flatMap((score) => [...stepsUnder(score)]))
  const goesOn = () => walk.followed < FOLLOWED * walk.exploration.states && !isAllShown(walk)
  for (const step of steps) {
    const stand = walk.ways.get(step)
    if (stand !== undefined && goesOn()) follow(walk, stand, () => null)
  }
  for (const step of steps) {
    for (const outcome of walk.outcomes.get(step) ?? []) {
      for (const when of [() => true, (time: number) => time === 1, (time: number) => time > 1])
        if (goesOn()) follow(walk, first, (name, time) => (name === step && when(time) ? outcome : null))
    }
  }
}

/** Outcomes on such paths, for each state that may be walked. */
const FOLLOWED = 4

const isAllShown = ({ protocol, produced }: Walk): boolean =>
  namesOf(protocol).scores.every((name) => produced.has(name))

function isNew(walk: Walk, stand: Stand): boolean {
  note(walk, stand)
  const { context } = stand.administration.snapshot
  const key = `${stand.start.name} ${walk.relevance.keyOf(context)}`
  if (walk.known.has(key)) return false
  walk.known.add(key)
  walk.deepest = Math.max(walk.deepest, stand.depth)
  return true
}

function reach({ ways }: Walk, step: string, stand: Stand): void {
  const before = ways.get(step)
  const isShorter = before === undefined || (before.start === stand.start && before.depth > stand.depth)
  if (isShorter) ways.set(step, stand)
}

/** What shows in a state, also in one that goes on like another. */
function note(walk: Walk, stand: Stand): void {
  const { context } = stand.administration.snapshot
  if (context.visit !== null) reach(walk, context.visit.step, stand)
  for (const { rule, verdict } of listOf(context.judged)) if (verdict === true) walk.fired.add(rule)
  if (context.finishedAt === null) return
  for (const { score, value } of scoreAll(walk.runner.standing(stand.administration)))
    if (value !== null) walk.produced.add(score.name)
}

function movesOf(walk: Walk, view: AdministrationView, stand: Stand): readonly Move[] {
  const { asking, choosing, sheet, step } = view
  if (asking !== null)
    return [true, false].map((apply) =>
      bodyMove(walk, asking.rule, asking.place, {
        outcome: apply ? 'applied' : 'not applied',
        usual: apply,
        body: { kind: 'ruled', rule: asking.rule, place: asking.place, apply },
      }),
    )
  if (choosing !== null)
    return choosing.items.map((_first, by) => {
      const items = [...choosing.items.slice(by), ...choosing.items.slice(0, by)]
      return bodyMove(walk, choosing.section, choosing.place, {
        outcome: items.join(', '),
        usual: by === 0,
        body: { kind: 'ordered', ...choosing, items, rule: 'chosen' },
      })
    })
  if (sheet !== null) return cellMoves(walk, sheet, stand)
  if (step === null) {
    return [bodyMove(walk, ':end', {}, { outcome: 'finished', usual: true, body: { kind: 'finished' } })]
  }
  const told = walk.runner.telling(stand.administration, walk.relevance.comparedOf)
  return trialMoves(walk, step, { told, closes: 'trial' })
}

/** The outcomes of the first open cell: what a page is filled with in another order stands the same. */
function cellMoves(walk: Walk, { section, place, cells }: SheetView, stand: Stand): readonly Move[] {
  const open = cells.find(({ trial }) => trial === null)
  if (open === undefined) {
    const body: EventBody = { kind: 'sheet_left', section, place }
    return [bodyMove(walk, section, place, { outcome: 'left', usual: true, body })]
  }
  reach(walk, open.step, stand)
  const told = walk.runner.telling(stand.administration, walk.relevance.comparedOf, open)
  return trialMoves(walk, { ...open, name: open.step, practice: false }, { told, closes: open.step })
}

/** `closes`: what an event names that closes the trial without a result. */
function trialMoves(
  walk: Walk,
  { name, kind, place, practice }: Pick<StepView, 'name' | 'kind' | 'place' | 'practice'>,
  { told, closes }: { readonly told: readonly TellingOutcome[]; readonly closes: string },
): readonly Move[] {
  const outcomes = told.map(({ label, events }, index): Move => {
    const taken = { at: name, place, outcome: label, usual: index === 0 }
    metAt(walk, name, label)
    return { taken, make: (stand) => afterEvents(walk, { stand, taken, kind, events }) }
  })
  const closings = practice ? [] : CLOSINGS
  for (const outcome of closings) metAt(walk, name, outcome)
  return [
    ...outcomes,
    ...closings.map((outcome) =>
      bodyMove(walk, name, place, {
        outcome,
        usual: false,
        body: { kind: 'closed', what: closes, place, outcome, reason: '' },
      }),
    ),
  ]
}

function metAt({ outcomes }: Walk, step: string, outcome: string): void {
  outcomes.set(step, (outcomes.get(step) ?? new Set()).add(outcome))
}

function bodyMove(
  walk: Walk,
  at: string,
  place: Place,
  { outcome, usual, body }: { readonly outcome: string; readonly usual: boolean; readonly body: EventBody },
): Move {
  const taken = { at, place, outcome, usual }
  const make = (stand: Stand) => {
    const next = act(walk, { ...stand, now: stand.now + 2000 }, body)
    return next && { ...next, depth: stand.depth + 1, from: stand, taken }
  }
  return { taken, make }
}

interface Making {
  readonly stand: Stand
  readonly taken: Taken
  readonly kind: string
  readonly events: readonly RehearsedEvent[]
}

/** Null where the chart refuses one of the events: this outcome can't be had here. */
function afterEvents(walk: Walk, { stand, taken, kind, events }: Making): Stand | null {
  let next: Stand | null = stand
  for (const { event, after, data } of events) {
    if (next === null) return null
    const now: number = next.now + after
    const stamp = { at: now, clock: CLOCK, input: 'key', late: 0 } as const
    const body = { ...data(stamp), kind: `${kind}.${event}`, step: taken.at, place: taken.place }
    next = act(walk, { ...next, now }, body)
  }
  return next && { ...next, depth: stand.depth + 1, from: stand, taken }
}

/** What an event, and what is then owed by itself, makes of a state; null where it is refused. */
function act({ runner, exploration }: Walk, stand: Stand, body: EventBody): Stand | null {
  let { administration, events } = stand
  for (let next: EventBody | null = body; next !== null; next = runner.owed(administration, LAST)) {
    events += 1
    const { idOf, at, user } = exploration
    const recorded: Recorded = { id: idOf(events), at: at(stand.now), user, body: next }
    const taken = runner.take(administration, recorded)
    if ('refused' in taken) return null
    administration = taken
  }
  return { ...stand, administration, events }
}

/**
 * Chance has no say: of what may be drawn, the last that is left. What a bag holds once, such as a blank among plain
 * pauses, is mostly named last; drawn first, it is met within the bound.
 */
const LAST = { random: () => 0.999, earlier: () => [] } as const

function opened(walk: Walk, start: Start): Stand | null {
  const { protocol, exploration, runner } = walk
  const { facts, conditions } = start
  const bodies: readonly EventBody[] = [
    exploration.opened,
    { kind: 'assigned', client: null, facts, reason: null },
    preparedFor(protocol, [], conditions),
    ...STARTING,
  ]
  const nowhere: Stand = {
    start,
    administration: runner.begin(),
    now: 0,
    events: 0,
    depth: 0,
    from: null,
    taken: null,
  }
  const stand = bodies.reduce<Stand | null>((so, body) => so && act(walk, so, body), nowhere)
  if (stand !== null) isNew(walk, stand)
  return stand
}

function wayTo(stand: Stand): Way {
  const taken: Taken[] = []
  for (let each: Stand | null = stand; each?.taken; each = each.from) taken.unshift(each.taken)
  return { start: stand.start.name, taken }
}
