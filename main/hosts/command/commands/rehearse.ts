import { z } from 'zod'
import { type ClientFacts, NOTHING_KNOWN } from '../../../../protocols/client.ts'
import type { Recorded } from '../../../../protocols/runner/events.ts'
import { simulate } from '../../../../protocols/rehearsal/simulate.ts'
import { PROGRAM_STAMP } from '../../../program.ts'
import { localTime } from '../../../records/index.ts'
import { HostProblem } from '../../problem.ts'
import { say } from '../../words.ts'
import { command } from '../command.ts'
import { findProtocol, type FoundProtocol } from '../find-protocol.ts'
import { recordedLine } from '../recorded.ts'
import { scoredShape, scoreEvents, scoreLines } from '../scoring.ts'

const shape = z.strictObject({
  seed: z.int(),
  events: z.array(recordedLine),
  scored: scoredShape,
})

export default command({
  name: 'rehearse',
  summary: 'rehearse.summary',
  names: { usage: 'PROTOCOL', least: 1, most: 1 },
  options: { seed: { type: 'string', value: 'N' } },
  shape,
  run({ names: [protocol = ''], text }) {
    const seed = seedOf(text('seed'))
    const found = findProtocol(protocol)
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

/** The day of every walk: the same seed gives the same bytes whenever it is walked. */
const DAY = '2025-01-15'
const BEGIN = Date.parse(`${DAY}T09:00:00Z`)
const USER = '00000000-0000-7000-8000-000000000000'
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
    opened: {
      kind: 'opened',
      protocol: {
        id: protocol.id,
        version: protocol.version,
        hash: disk.hash,
        language: protocol.language,
        wording: null,
        from,
      },
      program: PROGRAM_STAMP,
      rehearsal: true,
      visit: null,
      on: DAY,
      examiner: { id: USER, name: say('rehearse.examiner') },
    },
    nextId() {
      count += 1
      return `00000000-0000-7000-8000-${count.toString(16).padStart(12, '0')}`
    },
    at: (ms) => localTime(BEGIN + ms, 0),
  })
}

function lineOf({ at, body }: Recorded): string {
  const { kind, ...rest } = body
  const place = 'place' in rest && rest.place ? Object.values(rest.place).join(' ') : ''
  const step = 'step' in rest ? String(rest.step) : ''
  return `  ${at.slice(11, 19)}  ${[kind, step, place].filter(Boolean).join('  ')}`
}
