/** `rehearse --all-paths`: what walking all paths of a protocol by values shows. */
import { z } from 'zod'
import { explore, type Way } from '../../../protocols/rehearsal/explore.ts'
import { place } from '../../../protocols/runner/events.ts'
import { say } from '../words.ts'
import type { Outcome } from './command.ts'
import type { FoundProtocol } from './find-protocol.ts'
import { openedOf, USER, uuid, wallTime } from './made-up.ts'

const way = z.strictObject({
  /** The client and the conditions that it begins with. */
  start: z.string(),
  taken: z.array(
    z.strictObject({
      /** The step, rule or section. */
      at: z.string(),
      place,
      outcome: z.string(),
      /** Whether it is the outcome that its kind names first. */
      usual: z.boolean(),
    }),
  ),
})

export const exploredShape = z.strictObject({
  protocol: z.strictObject({ id: z.string(), version: z.string(), hash: z.string() }),
  walked: z.strictObject({ states: z.int(), deepest: z.int() }),
  /** So many states, and outcomes one after another, are walked at most; `met`: which of them ended the walk. */
  bound: z.strictObject({ states: z.int(), depth: z.int(), met: z.enum(['states', 'depth']).nullable() }),
  /** The shortest way to each step; null: it was not reached. */
  steps: z.array(z.strictObject({ step: z.string(), way: way.nullable() })),
  deadEnds: z.array(z.strictObject({ at: z.string(), way })),
  scoresNever: z.array(z.string()),
  rulesNever: z.array(z.string()),
})
type Explored = z.infer<typeof exploredShape>

/** Half a minute's walk on a slow machine. */
const BOUND = { states: 5000, depth: 500 } as const

export function exploreAll(found: FoundProtocol): Outcome<Explored> {
  const { protocol, disk } = found
  const { walked, bound, steps, deadEnds, scoresNever, rulesNever } = explore(protocol, {
    ...BOUND,
    opened: openedOf(found),
    user: USER,
    idOf: uuid,
    at: wallTime,
  })
  const value: Explored = {
    protocol: { id: protocol.id, version: protocol.version, hash: disk.hash },
    walked,
    bound: { ...BOUND, met: bound },
    steps: steps.map((one) => ({ step: one.step, way: one.way && plain(one.way) })),
    deadEnds: deadEnds.map((one) => ({ at: one.at, way: plain(one.way) })),
    scoresNever: [...scoresNever],
    rulesNever: [...rulesNever],
  }
  const isAllWell =
    steps.every((one) => one.way !== null) && deadEnds.length + scoresNever.length + rulesNever.length === 0
  return { value, lines: linesOf(value), exit: isAllWell ? 0 : 1 }
}

const plain = ({ start, taken }: Way): z.infer<typeof way> => ({ start, taken: [...taken] })

function linesOf({ protocol, walked, bound, steps, deadEnds, scoresNever, rulesNever }: Explored): string[] {
  return [
    say('explore.head', { protocol: protocol.id, ...walked }),
    say('explore.bound', { met: bound.met ?? 'none', states: bound.states, depth: bound.depth }),
    ...steps.map(({ step, way: to }) =>
      to === null ? say('explore.unreached', { step }) : say('explore.step', { step, ...wayWords(to) }),
    ),
    ...deadEnds.map(({ at, way: to }) => say('explore.dead_end', { at, ...wayWords(to) })),
    ...scoresNever.map((score) => say('explore.score_never', { score })),
    ...rulesNever.map((rule) => say('explore.rule_never', { rule })),
  ]
}

/** How long a way is, and what of it isn't as usual. */
function wayWords({ start, taken }: z.infer<typeof way>) {
  const unusual = taken
    .filter(({ usual }) => !usual)
    .map(({ at, place: where, outcome }) => [at, ...Object.values(where), outcome].join(' '))
  return { start, steps: taken.length, unusual: unusual.join('; ') || 'none' }
}
