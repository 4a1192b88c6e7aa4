/** Events and a stand-in domain for the tests of records, for use inside and outside the test runner. */
import {
  CLINIC,
  clientAdded,
  type Projector,
  protocolHash,
  protocolKept,
  type Records,
  userAdded,
  type WallClock,
} from '../../main/records/index.ts'
import { NOTHING_KNOWN, type Profile } from '../../protocols/client.ts'
import type { EventBody, Recorded } from '../../protocols/runner/events.ts'

/** A clock that stands until it is moved. */
export function handClock(start = Date.UTC(2026, 2, 2, 9, 0, 0), offset = 60) {
  let at = start
  let minutes = offset
  const clock: WallClock = { now: () => at, offsetMinutes: () => minutes }
  return {
    ...clock,
    move: (ms: number) => {
      at += ms
    },
    zone: (to: number) => {
      minutes = to
    },
  }
}

interface Counted {
  /** Who is said to have given it and for which day, oldest first: `undone` takes the last away. */
  readonly given: readonly { readonly examiner: string; readonly on: string }[]
  readonly phase: string
  readonly taps: number
  readonly deviations: number
}

function givenAfter(given: Counted['given'], body: EventBody): Counted['given'] {
  const last = given.at(-1) ?? { examiner: '', on: '' }
  if (body.kind === 'undone') return given.slice(0, -1)
  if (body.kind !== 'opened' && body.kind !== 'reattributed') return given
  const { examiner, on } = body as Extract<EventBody, { kind: 'reattributed' }>
  return [...given, { examiner: examiner?.name ?? last.examiner, on: on ?? last.on }]
}

/**
 * A stand-in for the domain: counts `tapped.tap` events and calls that a score. The real one belongs to the host,
 * and its own tests run it over real protocols.
 */
export const counting: Projector<Counted> = {
  begin: () => ({ given: [], phase: 'preparing', taps: 0, deviations: 0 }),
  touches: (kind) => kind !== 'tapped.tap' && kind !== 'remarked',
  take: (state, { body }) => ({
    given: givenAfter(state.given, body),
    phase: body.kind === 'finished' ? 'finished' : body.kind === 'paused' ? 'paused' : state.phase,
    taps: state.taps + (body.kind === 'tapped.tap' ? 1 : 0),
    deviations: state.deviations + (body.kind === 'deviated' ? 1 : 0),
  }),
  project: (state) => ({
    title: 'Ring board',
    phase: state.phase,
    ...(state.given.at(-1) ?? { examiner: '', on: '' }),
    deviations: state.deviations,
    basis: '{}',
    scores:
      state.phase === 'finished'
        ? [
            {
              score: 'total',
              place: { hand: 'right' },
              title: 'Total',
              value: state.taps,
              over: false,
              unit: '{count}',
              decimals: 0,
              better: 'higher',
              missing: null,
            },
          ]
        : [],
  }),
}

export const profileOf = (name: string, more: Partial<Profile> = {}): Profile => ({
  name,
  number: '',
  secondIdentifier: '',
  facts: NOTHING_KNOWN,
  language: '',
  interpreter: '',
  sight: '',
  hearing: '',
  speech: '',
  neglect: '',
  agreement: { given: 'unknown', by: '', on: null },
  ...more,
})

const FILES = new Map([
  ['protocol.yaml', 'evenhand: 1\nid: ring_board\n'],
  ['norms/adults.csv', 'sex,mean\nF,10\n'],
])
export const HASH = protocolHash(FILES)

export function addUser(records: Records, name: string): string {
  const user = records.newId()
  records.append(CLINIC, [userAdded.make({ user, name })], user)
  return user
}

export function addClient(records: Records, user: string, profile: Profile): string {
  const id = records.newId()
  records.append({ kind: 'client', id }, [clientAdded.make({ profile })], user)
  return id
}

export const openedBy = (user: string, name: string): EventBody => ({
  kind: 'opened',
  protocol: {
    id: 'ring_board',
    version: '1.2.0',
    hash: HASH,
    language: 'en',
    wording: null,
    from: 'library',
  },
  program: '0.1.0',
  rehearsal: false,
  visit: null,
  on: '2026-03-02',
  examiner: { id: user, name },
})

export const assignedTo = (client: string | null, reason: string | null = null): EventBody => ({
  kind: 'assigned',
  client,
  facts: NOTHING_KNOWN,
  reason,
})

export const tap = (count: number): EventBody => ({ kind: 'tapped.tap', step: 'taps', place: {}, count })

/** Keeps the test protocol and begins an administration by it. */
export function begin(records: Records, user: string, client: string | null): string {
  if (!records.read.protocolFiles(HASH)) {
    records.append(CLINIC, [protocolKept.make({ hash: HASH, files: Object.fromEntries(FILES) })], user)
  }
  const id = records.newId()
  records.append({ kind: 'administration', id }, [openedBy(user, 'Ada'), assignedTo(client)], user)
  return id
}

export const give = (records: Records, id: string, bodies: readonly EventBody[], user: string) =>
  records.append({ kind: 'administration', id }, bodies, user)

/** A clinic with somebody in it and one test given: what most tests begin with. */
export function furnished(records: Records) {
  const user = addUser(records, 'Ada')
  const client = addClient(records, user, profileOf('Łukasz Ångström', { number: 'K-104' }))
  const administration = begin(records, user, client)
  give(records, administration, [tap(1), tap(2), { kind: 'finished' }], user)
  return { user, client, administration }
}

export const kindsOf = (events: readonly Recorded[]) => events.map((event) => event.body.kind)

export const quietly = { progress: () => undefined, signal: new AbortController().signal }
