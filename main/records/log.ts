/** The event log as rows: how an event is written down and read back. Knows no event's meaning. */
import { bodyBytes, digestOf, type Envelope, FIRST, hashOf, SALT_BYTES, type StreamKind } from './chain.ts'
import type { Database, Value } from './database.ts'
import type { Entry, Stamped, Stream } from './entry.ts'
import type { Body } from './event-kind.ts'
import { hybridClock } from './hybrid-clock.ts'

export interface EventRow {
  readonly id: string
  readonly device: string
  readonly sequence: number
  readonly clock: string
  readonly user: string
  readonly stream_kind: StreamKind
  readonly stream: string
  readonly kind: string
  readonly version: number
  readonly at: string
  readonly salt: Uint8Array | null
  readonly body: Uint8Array | null
  readonly digest: Uint8Array
  readonly hash: Uint8Array
}

export const envelopeOf = (row: EventRow): Envelope => ({
  id: row.id,
  device: row.device,
  sequence: row.sequence,
  clock: row.clock,
  user: row.user,
  stream: { kind: row.stream_kind, id: row.stream },
  kind: row.kind,
  version: row.version,
  at: row.at,
})

const hex = (bytes: Uint8Array) => Buffer.from(bytes).toString('hex')

const readBody = (bytes: Uint8Array): Body => JSON.parse(Buffer.from(bytes).toString('utf8'))

export const entryOf = (row: EventRow): Entry => ({
  ...envelopeOf(row),
  body: row.body && readBody(row.body),
})

export interface Log {
  /**
   * Writes one event as this device's next, within the caller's transaction.
   * @returns null where an event with its id is there already: nothing was written then
   */
  write(stamped: Stamped, wall: number): Entry | null
  /** Remembers where the chain stands. @returns how to go back there when a transaction was taken back */
  mark(): () => void
  /** Where the device's own chain stands; null before its first event. */
  head(): { readonly sequence: number; readonly head: string } | null
  /** The device's own last two events, the last first. */
  last(): EventRow[]
  /** The hash of one event of a device's chain, hex. */
  hashAt(device: string, sequence: number): string | null
  byId(id: string): Entry | null
  count(): number
  /** A stream's events in order. */
  stream(of: Stream): Entry[]
  /** Those of the same stream that come before. */
  before(entry: Entry): Iterable<Entry>
  /** All rows in order, a few at a time, those after the given one. */
  after(last: EventRow | null, count: number): EventRow[]
  /** All rows device by device, each in its own sequence, those after the given one. */
  chained(last: EventRow | null, count: number): EventRow[]
}

const ORDER = 'ORDER BY clock, device, sequence'
export const COLUMNS =
  'id, device, sequence, clock, user, stream_kind, stream, kind, version, at, salt, body, digest, hash'

function statementsOf(database: Database) {
  const events = `SELECT ${COLUMNS} FROM event`
  return {
    insert: database.prepare(
      `INSERT INTO event (${COLUMNS}) VALUES (${COLUMNS.replace(/\w+/g, '?')}) ON CONFLICT (id) DO NOTHING`,
    ),
    head: database.prepare<[string], { sequence: number; hash: Uint8Array }>(
      'SELECT sequence, hash FROM event WHERE device = ? ORDER BY sequence DESC LIMIT 1',
    ),
    last: database.prepare<[string], EventRow>(`${events} WHERE device = ? ORDER BY sequence DESC LIMIT 2`),
    hashAt: database.prepare<[string, number], { hash: Uint8Array }>(
      'SELECT hash FROM event WHERE device = ? AND sequence = ?',
    ),
    newest: database.prepare<[], { clock: string | null }>('SELECT max(clock) AS clock FROM event'),
    count: database.prepare<[], { events: number }>('SELECT count(*) AS events FROM event'),
    byId: database.prepare<[string], EventRow>(`${events} WHERE id = ?`),
    stream: database.prepare<[string, string], EventRow>(
      `${events} WHERE stream_kind = ? AND stream = ? ${ORDER}`,
    ),
    before: database.prepare<[string, string, string, string, number], EventRow>(
      `${events} WHERE stream_kind = ? AND stream = ? AND (clock, device, sequence) < (?, ?, ?) ${ORDER}`,
    ),
    after: database.prepare<[string, string, number, number], EventRow>(
      `${events} WHERE (clock, device, sequence) > (?, ?, ?) ${ORDER} LIMIT ?`,
    ),
    chained: database.prepare<[string, number, number], EventRow>(
      `${events} WHERE (device, sequence) > (?, ?) ORDER BY device, sequence LIMIT ?`,
    ),
  }
}

/** @param random gives an event its salt */
export function logOf(database: Database, device: string, random: (bytes: number) => Uint8Array): Log {
  const statements = statementsOf(database)
  const head = statements.head.get(device)
  const clock = hybridClock(statements.newest.get()?.clock ?? null)
  let sequence = head?.sequence ?? 0
  let hash: Uint8Array = head?.hash ?? FIRST
  return {
    mark() {
      const stood = [sequence, hash] as const
      return () => {
        ;[sequence, hash] = stood
      }
    },
    write(stamped, wall) {
      const { id, at, user, stream, version, body } = stamped
      const envelope: Envelope = {
        id,
        device,
        sequence: sequence + 1,
        clock: clock.tick(wall),
        user,
        stream,
        kind: body.kind,
        version,
        at,
      }
      const bytes = bodyBytes(body)
      const salt = random(SALT_BYTES)
      const digest = digestOf(salt, bytes)
      const next = hashOf(hash, envelope, digest)
      const { sequence: number, clock: stamp, kind } = envelope
      const values: Value[] = [id, device, number, stamp, user, stream.kind, stream.id, kind, version, at]
      const { changes } = statements.insert.run(...values, salt, bytes, digest, next)
      if (changes === 0) return null
      sequence = number
      hash = next
      return { ...envelope, body }
    },
    head: () => (sequence === 0 ? null : { sequence, head: hex(hash) }),
    last: () => statements.last.all(device),
    hashAt(of, at) {
      const row = statements.hashAt.get(of, at)
      return row ? hex(row.hash) : null
    },
    byId(id) {
      const row = statements.byId.get(id)
      return row ? entryOf(row) : null
    },
    count: () => statements.count.get()?.events ?? 0,
    stream: (of) => statements.stream.all(of.kind, of.id).map(entryOf),
    before: (entry) =>
      statements.before
        .all(entry.stream.kind, entry.stream.id, entry.clock, entry.device, entry.sequence)
        .map(entryOf),
    after: (last, count) =>
      statements.after.all(last?.clock ?? '', last?.device ?? '', last?.sequence ?? 0, count),
    chained: (last, count) => statements.chained.all(last?.device ?? '', last?.sequence ?? 0, count),
  }
}
