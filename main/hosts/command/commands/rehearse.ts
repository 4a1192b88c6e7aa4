import { z } from 'zod'
import { type ClientFacts, NOTHING_KNOWN } from '../../../../protocols/client.ts'
import type { Recorded } from '../../../../protocols/runner/events.ts'
import { simulate } from '../../../../protocols/rehearsal/simulate.ts'
import { HostProblem } from '../../problem.ts'
import { say } from '../../words.ts'
import { command } from '../command.ts'
import { findProtocol, type FoundProtocol } from '../find-protocol.ts'
import { recordedLine } from '../recorded.ts'
import { exploreAll, exploredShape } from '../exploring.ts'
import { openedOf, USER, uuid, wallTime } from '../made-up.ts'
import { scoredShape, scoreEvents, scoreLines } from '../scoring.ts'

const walkShape = z.strictObject({
  seed: z.int(),
  events: z.array(recordedLine),
  scored: scoredShape,
})
/** One administration; with `--all-paths`, what walking all of them shows. */
const shape = z.union([walkShape, exploredShape])

export default command({
  name: 'rehearse',
  summary: 'rehearse.summary',
  names: { usage: 'PROTOCOL', least: 1, most: 1 },
  options: {
    seed: { type: 'string', value: 'N' },
    'all-paths': { type: 'boolean' },
  },
  shape,
  run({ names: [protocol = ''], text, flag }) {
    const seed = seedOf(text('seed'))
    const found = findProtocol(protocol)
    if (flag('all-paths')) return exploreAll(found)
    const events = rehearsed(found, seed)
    const scored = scoreEvents(found, events)
    const head = say('rehearse.head', {
      protocol: found.protocol.id,
      seed: String(seed),
      events: events.length,
    })
    return {
      value: { seed, events: [...events], scored },
      lines: [head, ...events.map(lineOf), '', ...scoreLines(scored)],
      exit: scored.refused.length ? 1 : 0,
    }
  },
})

const USUAL_SEED = 1

function seedOf(given: string | null): number {
  if (given === null) return USUAL_SEED
  if (!/^\d{1,9}$/.test(given)) throw new HostProblem('rehearse.bad_seed', { given })
  return Number(given)
}

const unaffected = { ...NOTHING_KNOWN.arms.right, status: 'unaffected' } as const

/** Somebody made up of whom enough is known for every order and most norms. */
const SOMEBODY: ClientFacts = {
  birth: { known: 'date', date: '1985-06-15' },
  sex: 'F',
  dominantBefore: 'right',
  usedNow: 'right',
  arms: { right: unaffected, left: unaffected },
  schoolingYears: null,
}

function rehearsed({ protocol, disk, from }: FoundProtocol, seed: number): readonly Recorded[] {
  let count = 0
  return simulate(protocol, {
    seed,
    facts: SOMEBODY,
    client: null,
    user: USER,
    kit: [],
    conditions: {},
    opened: openedOf({ protocol, disk, from }),
    nextId() {
      count += 1
      return uuid(count)
    },
    at: wallTime,
  })
}

function lineOf({ at, body }: Recorded): string {
  const { kind, ...rest } = body
  const place = 'place' in rest && rest.place ? Object.values(rest.place).join(' ') : ''
  const step = 'step' in rest ? String(rest.step) : ''
  return `  ${at.slice(11, 19)}  ${[kind, step, place].filter(Boolean).join('  ')}`
}
