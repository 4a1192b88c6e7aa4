/**
 * Checks records against themselves: that every device's chain is whole, every body is the one that was hashed,
 * every event reads, and that the read models, stored scores included, are what the log gives when it is worked
 * out anew. It reads in pieces and lets the host live in between.
 */
import type { Projector } from './administration.ts'
import { bodyBytes, digestOf, FIRST, hashOf } from './chain.ts'
import { damageOf, type Database, scratchDatabase } from './database.ts'
import { standingOf } from './events.ts'
import { envelopeOf, entryOf, type EventRow, type Log } from './log.ts'
import { migrate } from './migration.ts'
import { READ_MODELS, readModelsOf } from './read-models.ts'
import { CHUNK, takeChunk } from './rebuild.ts'
import { keyOf } from './tables.ts'
import { protocolHash } from './protocol-hash.ts'
import { type SealKeys, sealsOf } from './verify-seals.ts'
import { CLINIC } from './streams.ts'
import type { event as recordsSalvaged } from './events/records-salvaged.v1.ts'
import { LOCAL_TIME } from './wall-clock.ts'

export interface VerifyOptions {
  /** Called with the part that is done, 0 to 1. */
  readonly progress: (done: number) => void
  /** Stops between two pieces; the promise then rejects with the signal's reason. */
  readonly signal: AbortSignal
}

export interface VerifyProblem {
  /**
   * - `file`: SQLite finds the file damaged. - `gap`: events of a device are missing before this one.
   * - `chain`: the event is not the one that its device hashed, or the one before it isn't.
   * - `digest`: the body or its salt was altered. - `half-erased`: one of body and salt is gone, not both.
   * - `order`: the device's logical clock went back, or the time is none. - `unreadable`: not of its kind.
   * - `unknown`: a newer program wrote it; it is kept. - `protocol`: kept files don't match their hash.
   * - `seal`: a seal is not its device's over the events before it. - `tail`: sealed events are missing at the end,
   *   or are others. - `witness`: what was noted of the last seal was altered.
   * - `scores`: a stored score differs from scoring again. - `read-model`: a row differs from the log.
   */
  readonly code:
    | 'file'
    | 'gap'
    | 'chain'
    | 'digest'
    | 'half-erased'
    | 'order'
    | 'unreadable'
    | 'unknown'
    | 'protocol'
    | 'seal'
    | 'tail'
    | 'witness'
    | 'scores'
    | 'read-model'
  /** The event that fails; for rows, the last event of the stream that they are of, where there is one. */
  readonly event: string | null
  readonly detail: Readonly<Record<string, string | number>>
}

export interface VerifyReport {
  readonly events: number
  readonly devices: number
  readonly erased: number
  /** Events that were lost with a damaged file, as is written down in these records. */
  readonly lost: number
  readonly problems: readonly VerifyProblem[]
}

interface Chain {
  readonly sequence: number
  readonly hash: Uint8Array
  readonly clock: string
}

const problem = (
  code: VerifyProblem['code'],
  event: string | null,
  detail: VerifyProblem['detail'] = {},
): VerifyProblem => ({ code, event, detail })

const same = (a: Uint8Array, b: Uint8Array) => Buffer.compare(a, b) === 0

/** What is wrong with one event as a link of its device's chain. */
function chainProblems(row: EventRow, before: Chain, isKnownGap: boolean): VerifyProblem[] {
  const found: VerifyProblem[] = []
  const { device, sequence } = row
  if (sequence !== before.sequence + 1) {
    if (!isKnownGap)
      found.push(problem('gap', row.id, { device, from: before.sequence + 1, to: sequence - 1 }))
  } else if (!same(hashOf(before.hash, envelopeOf(row), row.digest), row.hash)) {
    found.push(problem('chain', row.id, { device, sequence }))
  }
  if (row.clock <= before.clock || !LOCAL_TIME.test(row.at)) {
    found.push(problem('order', row.id, { clock: row.clock, at: row.at }))
  }
  return found
}

/** What is wrong with what one event says. */
function bodyProblems(row: EventRow): VerifyProblem[] {
  if (!row.body || !row.salt) return row.body || row.salt ? [problem('half-erased', row.id)] : []
  if (!same(digestOf(row.salt, row.body), row.digest)) return [problem('digest', row.id)]
  let body: ReturnType<typeof entryOf>['body']
  try {
    body = entryOf(row).body
  } catch {
    return [problem('unreadable', row.id, { kind: row.kind })]
  }
  if (!body || body.kind !== row.kind || !same(bodyBytes(body), row.body)) {
    return [problem('unreadable', row.id, { kind: row.kind })]
  }
  const standing = standingOf(row.stream_kind, row.version, body)
  if (standing !== 'known') return [problem(standing, row.id, { kind: row.kind, version: row.version })]
  if ('files' in body && 'hash' in body && row.kind === 'protocol-kept') {
    const files = new Map(Object.entries(body.files as Record<string, string>))
    if (protocolHash(files) !== body.hash) return [problem('protocol', row.id, { hash: String(body.hash) })]
  }
  return []
}

/** The rows of a table that differ between two databases, by their key. */
function differences(table: string, stored: Database, anew: Database): Record<string, string>[] {
  const key = keyOf(stored, table)
  const rows = (database: Database) =>
    new Map(
      database
        .prepare<[], Record<string, unknown>>(`SELECT * FROM ${table}`)
        .all()
        .map((row) => [
          JSON.stringify(key.map((column) => row[column])),
          JSON.stringify({ ...row, row: null }),
        ]),
    )
  const left = rows(stored)
  const right = rows(anew)
  return [...new Set([...left.keys(), ...right.keys()])]
    .filter((name) => left.get(name) !== right.get(name))
    .map((name) => {
      const values: unknown[] = JSON.parse(name)
      return Object.fromEntries(key.map((column, index) => [column, String(values[index])]))
    })
}

function readModelProblems(stored: Database, anew: Database): VerifyProblem[] {
  const last = stored.prepare<[string], { id: string }>(
    'SELECT id FROM event WHERE stream = ? ORDER BY clock DESC, device DESC, sequence DESC LIMIT 1',
  )
  return READ_MODELS.flatMap((table) =>
    differences(table, stored, anew).map((key) => {
      const stream = key['administration'] ?? key['id'] ?? ''
      const event = last.get(stream)?.id ?? null
      return problem(table === 'score' ? 'scores' : 'read-model', event, { table, ...key })
    }),
  )
}

function damage(database: Database): VerifyProblem[] {
  const found = String(database.pragma('quick_check(1)', { simple: true }))
  return found === 'ok' ? [] : [problem('file', null, { says: found })]
}

const breath = () => new Promise((resume) => setImmediate(resume))

/** Where events are known to be missing, since the file was carried over from a damaged one. */
function knownGaps(log: Log): ReadonlySet<string> {
  const lost = log
    .stream(CLINIC)
    .flatMap(({ kind, body }) =>
      kind === 'records-salvaged' && body ? (body as ReturnType<typeof recordsSalvaged.make>).lost : [],
    )
  return new Set(lost.map(({ device, from, to }) => `${device} ${from} ${to}`))
}

/** Checks every event, device by device. @yields after each chunk how many were looked at */
function* eventsChecked(log: Log, found: VerifyProblem[], chains: Map<string, Chain>, keys: SealKeys) {
  const seals = sealsOf(keys)
  const gaps = knownGaps(log)
  let last: EventRow | null = null
  let [erased, lost] = [0, 0]
  for (let rows = log.chained(null, CHUNK); rows.length > 0; rows = log.chained(last, CHUNK)) {
    for (const row of rows) {
      const before = chains.get(row.device) ?? { sequence: 0, hash: FIRST, clock: '' }
      const known = gaps.has(`${row.device} ${before.sequence + 1} ${row.sequence - 1}`)
      if (known) lost += row.sequence - 1 - before.sequence
      found.push(...chainProblems(row, before, known), ...bodyProblems(row), ...seals.problems(row, before))
      chains.set(row.device, row)
      if (!row.body) erased += 1
      last = row
    }
    yield { looked: rows.length, erased, lost }
  }
  found.push(...seals.atEnd(log))
}

/** What a piece of work finds; where the file turns out to be damaged, that is what it found. */
async function unlessDamaged(work: () => Promise<void>, found: VerifyProblem[]): Promise<void> {
  try {
    await work()
  } catch (error) {
    const says = damageOf(error)
    if (says === null) throw error
    if (!found.some((one) => one.code === 'file')) found.push(problem('file', null, { says }))
  }
}

export async function verify(
  database: Database,
  log: Log,
  projector: Projector<unknown>,
  keys: SealKeys,
  { progress, signal }: VerifyOptions,
): Promise<VerifyReport> {
  const problems: VerifyProblem[] = []
  const chains = new Map<string, Chain>()
  const counted = { events: 0, erased: 0, lost: 0 }
  let [total, taken] = [1, 0]
  const told = async () => {
    await breath()
    signal.throwIfAborted()
    progress(Math.min(1, (counted.events + taken) / 2 / total))
  }
  await unlessDamaged(async () => {
    problems.push(...damage(database))
    total = Math.max(1, log.count())
    for (const piece of eventsChecked(log, problems, chains, keys)) {
      counted.events += piece.looked
      counted.erased = piece.erased
      counted.lost = piece.lost
      await told()
    }
  }, problems)
  const anew = scratchDatabase()
  try {
    migrate(anew, ':memory:')
    const models = readModelsOf(anew, projector, log.before, false)
    await unlessDamaged(async () => {
      // No breath after the last piece: nothing may be appended between it and the comparison.
      for (let next = takeChunk(models, log, null); next; next = takeChunk(models, log, next)) {
        taken += CHUNK
        if (log.after(next, 1).length > 0) await told()
      }
      problems.push(...readModelProblems(database, anew))
    }, problems)
  } finally {
    anew.close()
  }
  progress(1)
  return { ...counted, devices: chains.size, problems }
}
