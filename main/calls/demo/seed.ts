/**
 * Fills a new demo clinic: its people, and past visits given by the simulated client through the ordinary way
 * that records are written. The same for the same day; nothing in it is about anybody.
 */
import type { Protocol } from '../../../protocols/language/model.ts'
import { simulate } from '../../../protocols/rehearsal/simulate.ts'
import type { EventBody, KitPiece, Recorded } from '../../../protocols/runner/events.ts'
import { runnerFor } from '../../../protocols/runner/index.ts'
import { buildResult } from '../../../protocols/scoring/build-result.ts'
import { givenOf } from '../../../protocols/scoring/given.ts'
import { PROGRAM_STAMP } from '../../program.ts'
import {
  CLINIC,
  clientAdded,
  kitRegistered,
  localTime,
  protocolKept,
  type Records,
  type Stream,
  userAdded,
  visitClosed,
  visitOpened,
  type WallClock,
} from '../../records/index.ts'
import { shortText } from '../../reports/index.ts'
import type { Shelf, Shelved } from '../shelf.ts'
import { abilityOf } from './ability.ts'
import { CLIENTS, type DemoClient, EXAMINERS, type PastVisit } from './people.ts'

const DAY = 86_400_000
const MINUTE = 60_000
/** Minutes after midnight, local time, at which the clinic opens in the morning. */
const OPENS = 8 * 60
/** The clinic was set up so many days before its first visit. */
const BEFORE_FIRST = 3
/** Notes of visits this recent are still to be taken. */
const NOTE_DUE = 6

/** A wall clock that stands where the story is, from the morning on which the clinic was set up. */
export interface StoryClock extends WallClock {
  /** Midnight before the day on which the demo is opened, local time. */
  readonly today: number
  moment: number
}

export function storyClock(clock: WallClock): StoryClock {
  const offset = clock.offsetMinutes(clock.now()) * MINUTE
  const today = Math.floor((clock.now() + offset) / DAY) * DAY - offset
  const first = Math.max(...CLIENTS.flatMap(({ visits }) => visits.map(({ daysAgo }) => daysAgo)))
  const story: StoryClock = {
    today,
    moment: today - (first + BEFORE_FIRST) * DAY + OPENS * MINUTE,
    now: () => story.moment,
    offsetMinutes: (at) => clock.offsetMinutes(at),
  }
  return story
}

interface Story {
  readonly records: Records
  readonly shelf: Shelf
  readonly clock: StoryClock
  readonly users: readonly { readonly id: string; readonly name: string }[]
  seed: number
}

interface Appointment {
  readonly client: DemoClient
  readonly id: string
  readonly visit: PastVisit
}

export function seedDemo(records: Records, shelf: Shelf, clock: StoryClock): void {
  const users = EXAMINERS.map((name) => ({ id: records.newId(), name }))
  for (const user of users)
    records.append(CLINIC, [userAdded.make({ user: user.id, name: user.name })], user.id)
  const story: Story = { records, shelf, clock, users, seed: 1 }
  registerKit(story)
  const appointments = CLIENTS.flatMap((client) => {
    const id = addClient(story, client)
    return client.visits.map((visit) => ({ client, id, visit }))
  })
  appointments.sort((a, b) => b.visit.daysAgo - a.visit.daysAgo)
  for (const [index, appointment] of appointments.entries()) receive(story, appointment, index)
}

const userOf = ({ users }: Story, examiner: 0 | 1) => users[examiner] ?? { id: '', name: '' }

function addClient(story: Story, { profile }: DemoClient): string {
  const id = story.records.newId()
  story.clock.moment += 2 * MINUTE
  story.records.append({ kind: 'client', id }, [clientAdded.make({ profile })], userOf(story, 0).id)
  return id
}

/** One piece of each item that the library's tests want registered, in the first build that each allows. */
function registerKit(story: Story): void {
  for (const { protocol } of story.shelf.list()) {
    for (const item of protocol?.kit ?? []) {
      if (!protocol || !item.registered) continue
      const piece: KitPiece = {
        id: story.records.newId(),
        item: item.id,
        ownName: `Demo ${item.id.replaceAll('_', ' ')} 1`,
        conditions: Object.fromEntries(
          protocol.conditions
            .filter(({ setBy }) => setBy === 'kit')
            .flatMap(({ name, usual, options }) => {
              const option = usual ?? options[0]?.id
              return option === undefined ? [] : [[name, option]]
            }),
        ),
        unit: '',
        lastCheck: null,
        nextCheck: null,
      }
      const { id } = userOf(story, 0)
      story.records.append(CLINIC, [kitRegistered.make({ protocol: protocol.id, piece })], id)
    }
  }
}

function receive(story: Story, { client, id, visit: past }: Appointment, index: number): void {
  const { records, clock } = story
  const user = userOf(story, past.examiner)
  const stream: Stream = { kind: 'client', id }
  // Spread over the day, so that visits of one day don't overlap.
  const begins = clock.today - past.daysAgo * DAY + (OPENS + 30 + (index % 6) * 75) * MINUTE
  clock.moment = Math.max(begins, clock.moment + MINUTE)
  const visit = records.newId()
  records.append(stream, [visitOpened.make({ visit })], user.id)
  for (const test of past.tests) {
    const [shelved] = story.shelf.named(test)
    if (shelved) give(story, { shelved, client, id, visit, past })
  }
  clock.moment += 5 * MINUTE
  records.append(stream, [visitClosed.make({ visit })], user.id)
}

interface Giving {
  readonly shelved: Shelved & { readonly protocol: NonNullable<Shelved['protocol']> }
  readonly client: DemoClient
  readonly id: string
  readonly visit: string
  readonly past: PastVisit
}

function give(story: Story, { shelved, client, id, visit, past }: Giving): void {
  const { records, clock } = story
  const { protocol, hash, files } = shelved
  const user = userOf(story, past.examiner)
  if (!records.read.protocolFiles(hash))
    records.append(CLINIC, [protocolKept.make({ hash, files: Object.fromEntries(files) })], user.id)
  const begins = clock.moment + MINUTE
  const at = (moment: number) => localTime(moment, clock.offsetMinutes(moment))
  const given = simulate(protocol, {
    seed: story.seed,
    facts: client.profile.facts,
    client: id,
    user: user.id,
    kit: records.read.kit(protocol.id),
    conditions: {},
    opened: {
      kind: 'opened',
      protocol: {
        id: protocol.id,
        version: protocol.version,
        hash,
        language: protocol.language,
        wording: null,
        from: shelved.from,
      },
      program: PROGRAM_STAMP,
      rehearsal: false,
      visit,
      on: at(begins).slice(0, 10),
      examiner: user,
    },
    does: abilityOf(protocol.id, client.profile.facts, past.recovered),
    nextId: () => records.newId(),
    at: (ms) => at(begins + ms),
  })
  const events = past.deviation ? deviating(given, records.newId(), past.deviation) : given
  story.seed += 1
  const stream: Stream = { kind: 'administration', id: records.newId() }
  const bodies = events.map(({ body }) => body)
  const stamped = records.stamp(stream, bodies, user.id)
  clock.moment = Math.max(clock.moment, Date.parse(events.at(-1)?.at ?? at(begins)))
  records.keep(stamped.map((one, index) => ({ ...one, ...idAndTime(events[index]) })))
  if (past.daysAgo > NOTE_DUE) {
    clock.moment += MINUTE
    const noted: EventBody = { kind: 'noted', text: noteOf(protocol, stream.id, events) }
    records.append(stream, [noted], user.id)
  }
}

/** The same administration with a deviation told once it had begun. */
function deviating(
  events: readonly Recorded[],
  id: string,
  deviation: NonNullable<PastVisit['deviation']>,
): readonly Recorded[] {
  const begun = events.findIndex(({ body }) => body.kind === 'confirmed')
  const { at, user } = events[begun] ?? { at: '', user: '' }
  const told: Recorded = { id, at, user, body: { kind: 'deviated', ...deviation, norms: 'caution' } }
  return events.toSpliced(begun + 1, 0, told)
}

/** The text for the record, as it is proposed to the examiner. */
function noteOf(protocol: Protocol, id: string, events: readonly Recorded[]): string {
  const runner = runnerFor(protocol)
  const { administration, refused } = runner.replay(events)
  if (refused.length > 0) throw new Error('The demo gives a test in a way that its protocol refuses.')
  const standing = runner.standing(administration)
  const given = givenOf(id, administration)
  return shortText(
    buildResult({ protocol, administration: given, standing, earlier: [], verified: new Map() }),
  )
}

const idAndTime = (event: { readonly id: string; readonly at: string } | undefined) =>
  event ? { id: event.id, at: event.at } : {}
