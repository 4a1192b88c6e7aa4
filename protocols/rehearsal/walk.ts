/** What a walk of all paths knows so far, and how it goes on by one event. */
import type { Protocol } from '../language/model.ts'
import type { EventBody, Place, Recorded } from '../runner/events.ts'
import { listOf } from '../runner/grown.ts'
import { type Administration, type Runner, runnerFor } from '../runner/index.ts'
import { scoreAll } from '../scoring/scores.ts'
import { namesOf } from './names-of.ts'
import { type Opened, preparedFor, STARTING } from './opening.ts'
import { type Relevance, relevanceOf } from './relevance.ts'
import type { Start } from './starts.ts'

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
export interface Taken {
  readonly at: string
  readonly place: Place
  readonly outcome: string
  readonly usual: boolean
}

export interface Stand {
  readonly start: Start
  readonly administration: Administration
  /** ms since it was opened, on the made-up clock too. */
  readonly now: number
  readonly events: number
  readonly depth: number
  readonly from: Stand | null
  readonly taken: Taken | null
}

export interface Walk {
  readonly protocol: Protocol
  readonly exploration: Exploration
  readonly runner: Runner
  readonly relevance: Relevance
  /** What a walk may show, in the order of the file. */
  readonly names: ReturnType<typeof namesOf>
  readonly known: Set<string>
  readonly ways: Map<string, Stand>
  readonly produced: Set<string>
  readonly fired: Set<string>
  /** What was met at each step, by its name. */
  readonly met: Map<string, Met>
  readonly deadEnds: Stand[]
  deepest: number
  /** Outcomes taken on single paths. */
  followed: number
  bound: 'states' | 'depth' | null
}

/** What a step can end in, without closings, and the passes of the innermost loop that it was met in. */
interface Met {
  readonly outcomes: Set<string>
  readonly passes: Set<string>
}

export function beginWalk(protocol: Protocol, exploration: Exploration): Walk {
  return {
    protocol,
    exploration,
    runner: runnerFor(protocol),
    relevance: relevanceOf(protocol),
    names: namesOf(protocol),
    known: new Set(),
    ways: new Map(),
    produced: new Set(),
    fired: new Set(),
    met: new Map(),
    deadEnds: [],
    deepest: 0,
    followed: 0,
    bound: null,
  }
}

/** The administration at its first step; null where that client can't be given it. */
export function openedBy(walk: Walk, start: Start): Stand | null {
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

/**
 * Chance has no say: of what may be drawn, the last that is left. What a bag holds once, such as a blank among plain
 * pauses, is mostly named last; drawn first, it is met within the bound.
 */
const LAST = { random: () => 0.999, earlier: () => [] } as const

/** What an event, and what is then owed by itself, makes of a state; null where it is refused. */
export function act({ runner, exploration }: Walk, stand: Stand, body: EventBody): Stand | null {
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

/** True for a state that goes on like none before it. */
export function isNew(walk: Walk, stand: Stand): boolean {
  note(walk, stand)
  const key = `${stand.start.name} ${walk.relevance.keyOf(stand.administration.snapshot.context)}`
  if (walk.known.has(key)) return false
  walk.known.add(key)
  walk.deepest = Math.max(walk.deepest, stand.depth)
  return true
}

export function reach({ ways }: Walk, step: string, stand: Stand): void {
  const before = ways.get(step)
  const isShorter = before === undefined || (before.start === stand.start && before.depth > stand.depth)
  if (isShorter) ways.set(step, stand)
}

/** What shows in a state, also in one that goes on like another. */
export function note(walk: Walk, stand: Stand): void {
  const { context } = stand.administration.snapshot
  if (context.visit !== null) reach(walk, context.visit.step, stand)
  for (const { rule, verdict } of listOf(context.judged)) if (verdict === true) walk.fired.add(rule)
  if (context.finishedAt === null) return
  for (const { score, value } of scoreAll(walk.runner.standing(stand.administration)))
    if (value !== null) walk.produced.add(score.name)
}

/** Scores that had no value yet and rules that never held. */
export const missingIn = ({ names, produced, fired }: Walk) => ({
  scores: names.scores.filter((name) => !produced.has(name)),
  rules: names.rules.filter((name) => !fired.has(name)),
})
