/**
 * Walks all paths of a protocol by values: every outcome that the file can tell apart at every step, in the order of
 * length, so that the first way found to a step is a shortest one. States that go on alike are walked once.
 */
import type { Protocol } from '../language/model.ts'
import { followMissing, usualPath } from './following.ts'
import { movesOf } from './moves.ts'
import { startsOf } from './starts.ts'
import {
  beginWalk,
  type Exploration,
  isNew,
  missingIn,
  openedBy,
  type Stand,
  type Taken,
  type Walk,
} from './walk.ts'

export interface Way {
  /** What was told of the client and the kit: `usual`, a condition that differs, … */
  readonly start: string
  readonly taken: readonly Taken[]
}

export interface Explored {
  readonly walked: { readonly states: number; readonly deepest: number }
  /** The bound that was met, beyond which nothing is known; null: every path was walked. */
  readonly bound: Walk['bound']
  /** Every step of the file with a shortest way to it; where a bound was met, the shortest that was found. */
  readonly steps: readonly { readonly step: string; readonly way: Way | null }[]
  /** Where no outcome leads on. */
  readonly deadEnds: readonly { readonly at: string; readonly way: Way }[]
  /** Scores that had no value at the end of any path. */
  readonly scoresNever: readonly string[]
  /** Rules whose condition never held. */
  readonly rulesNever: readonly string[]
}

export function explore(protocol: Protocol, exploration: Exploration): Explored {
  const walk = beginWalk(protocol, exploration)
  const firsts = startsOf(protocol)
    .map((start) => openedBy(walk, start))
    .filter((first) => first !== null)
  for (const [index, first] of firsts.entries()) {
    const left = exploration.states - walk.known.size
    const part = index < firsts.length - 1 ? Math.ceil(left / 2) : left
    usualPath(walk, first)
    walkFrom(walk, first, walk.known.size + part)
  }
  followMissing(walk, firsts)
  const missing = missingIn(walk)
  return {
    walked: { states: walk.known.size, deepest: walk.deepest },
    bound: walk.bound,
    steps: walk.names.steps.map((name) => {
      const stand = walk.ways.get(name)
      return { step: name, way: stand === undefined ? null : wayTo(stand) }
    }),
    deadEnds: walk.deadEnds.map((stand) => ({
      at: stand.administration.snapshot.context.at,
      way: wayTo(stand),
    })),
    scoresNever: missing.scores,
    rulesNever: missing.rules,
  }
}

/** `most`: where walking from this start ends, so that others have their turn. */
function walkFrom(walk: Walk, first: Stand, most: number): void {
  const waiting = [first]
  for (const next of waiting) {
    if (walk.known.size >= most) {
      walk.bound ??= 'states'
      return
    }
    if (next.depth >= walk.exploration.depth) walk.bound ??= 'depth'
    else waiting.push(...onward(walk, next))
  }
}

/** States after this one that were never met before. */
function onward(walk: Walk, stand: Stand): readonly Stand[] {
  const here = walk.runner.atHand(stand.administration)
  if (here.phase !== 'giving') return []
  const reached = movesOf(walk, here, stand)
    .map((move) => move.make(stand))
    .filter((next) => next !== null)
  if (reached.length === 0) walk.deadEnds.push(stand)
  return reached.filter((next) => isNew(walk, next))
}

function wayTo(stand: Stand): Way {
  const taken: Taken[] = []
  for (let each: Stand | null = stand; each?.taken; each = each.from) taken.unshift(each.taken)
  return { start: stand.start.name, taken }
}
