/**
 * What can be read of a damaged file, carried over into a new one. The damaged one is set aside first, whole and as
 * it is. Events are carried over byte by byte, so their chain still verifies; what is missing in it is written down
 * in the new file as an event of its own. The machine becomes a new device, as nobody knows what the old one's chain
 * had come to.
 */
import { join } from 'node:path'
import { Refused } from '../contract/procedure.ts'
import type { Projector } from './administration.ts'
import { digestOf, FIRST, hashOf } from './chain.ts'
import { type Database, damageOf, faultOf, openDatabase } from './database.ts'
import { event as deviceAdded } from './events/device-added.v1.ts'
import { event as recordsSalvaged } from './events/records-salvaged.v1.ts'
import { DATABASE, removeDatabase, setAside, swapIn } from './files.ts'
import { idMaker } from './ids.ts'
import { newDevice, readKeys, writeKeys } from './keys.ts'
import { COLUMNS, envelopeOf, type EventRow, logOf } from './log.ts'
import { migrate } from './migration.ts'
import { markDamaged } from './quick-check.ts'
import { randomPool } from './random-pool.ts'
import { readableRows } from './readable-rows.ts'
import { readModelsOf } from './read-models.ts'
import { rebuild } from './rebuild.ts'
import type { StoreKind } from './stores.ts'
import { CLINIC, PROGRAM } from './streams.ts'
import { localTime, type WallClock } from './wall-clock.ts'
import { readWitness } from './witness.ts'
import { writerOf } from './writer.ts'

interface SalvageOptions {
  readonly folder: string
  readonly store: StoreKind
  readonly projector: Projector<unknown>
  readonly clock: WallClock
}

interface Range {
  readonly device: string
  readonly from: number
  readonly to: number
}

export interface SalvageReport {
  /** The folder in which the damaged file lies now, with its keys. */
  readonly setAside: string
  /** How many events were carried over. */
  readonly kept: number
  /** How many could not be. */
  readonly lost: number
  /** Events of which what they said was altered: it was left out. */
  readonly altered: number
  /** Clients and administrations that something is missing of, as far as the damaged file tells. */
  readonly of: readonly {
    readonly kind: 'client' | 'administration'
    readonly id: string
    readonly title: string
  }[]
}

const same = (a: Uint8Array, b: Uint8Array) => Buffer.compare(a, b) === 0

interface Carried {
  readonly kept: number
  readonly altered: readonly EventRow[]
  readonly lost: readonly Range[]
}

/** Carries over what is as it was hashed. */
function carryOver(from: Database, to: Database, sealed: Range | null): Carried {
  const insert = to.prepare(
    `INSERT INTO event (${COLUMNS}) VALUES (${COLUMNS.replace(/\w+/g, '?')}) ON CONFLICT DO NOTHING`,
  )
  const last = new Map<string, { sequence: number; hash: Uint8Array }>()
  const altered: EventRow[] = []
  const lost: Range[] = []
  let kept = 0
  for (const row of readableRows(from)) {
    const { device, sequence } = row
    const before = last.get(device) ?? { sequence: 0, hash: FIRST }
    const follows = sequence === before.sequence + 1
    const isChained = !follows || same(hashOf(before.hash, envelopeOf(row), row.digest), row.hash)
    if (sequence <= before.sequence || !isChained) continue
    const isWhole = !row.body || !row.salt || same(digestOf(row.salt, row.body), row.digest)
    const whole = isWhole ? row : { ...row, body: null, salt: null }
    const names = COLUMNS.split(', ') as (keyof EventRow)[]
    if (insert.run(...names.map((name) => whole[name])).changes === 0) continue
    if (!follows) lost.push({ device, from: before.sequence + 1, to: sequence - 1 })
    if (!isWhole) altered.push(row)
    last.set(device, row)
    kept += 1
  }
  const end = sealed && (last.get(sealed.device)?.sequence ?? 0)
  if (sealed && end !== null && end < sealed.to) lost.push({ ...sealed, from: end + 1 })
  return { kept, altered, lost }
}

/** What the lost events were of: an index of the log may tell although the log itself can't be read. */
function streamsOf(from: Database, { altered, lost }: Carried): Pick<EventRow, 'stream_kind' | 'stream'>[] {
  const found: Pick<EventRow, 'stream_kind' | 'stream'>[] = [...altered]
  const index = from.prepare<[string, number, number], Pick<EventRow, 'stream_kind' | 'stream'>>(
    `SELECT DISTINCT stream_kind, stream FROM event INDEXED BY event_stream
     WHERE device = ? AND sequence BETWEEN ? AND ?`,
  )
  try {
    for (const { device, from: first, to } of lost) found.push(...index.iterate(device, first, to))
  } catch (error) {
    if (damageOf(error) === null) throw error
  }
  return found
}

function titlesOf(database: Database, streams: ReturnType<typeof streamsOf>): SalvageReport['of'] {
  const client = database.prepare<[string], string>('SELECT name FROM client WHERE id = ?').pluck()
  const administration = database
    .prepare<[string], string>(
      `SELECT a.title || coalesce(', ' || c.name, '') || ', ' || a.given_on
       FROM administration a LEFT JOIN client c ON c.id = a.client WHERE a.id = ?`,
    )
    .pluck()
  const known = new Map(streams.map((one) => [one.stream, one.stream_kind]))
  return [...known].flatMap(([id, kind]) => {
    if (kind === 'clinic') return []
    const title = (kind === 'client' ? client : administration).get(id)
    return [{ kind, id, title: String(title ?? '') }]
  })
}

/**
 * Salvages a folder's records. When it fails, the damaged file is where it was.
 * @throws Refused `records.keys-missing` and the others of opening; `records.damaged` where nothing can be read
 */
export function salvage(options: SalvageOptions): SalvageReport {
  const { folder, clock } = options
  const path = join(folder, DATABASE)
  const keys = readKeys(folder)
  if (!keys) throw new Refused('records.keys-missing', { path })
  const now = localTime(clock.now(), clock.offsetMinutes(clock.now()))
  const unfinished = join(folder, 'records.salvaged.db')
  try {
    // Whatever comes in between, the file is not opened as sound before this is done.
    openDatabase(path, keys.data).close()
    markDamaged(folder, now)
    const aside = setAside(folder, now)
    removeDatabase(unfinished)
    const sealed = readWitness(folder, keys)
    const from = openDatabase(join(aside, DATABASE), keys.data)
    const to = openDatabase(unfinished, keys.data)
    try {
      const range =
        sealed && sealed !== 'unreadable' ? { device: sealed.device, from: 1, to: sealed.sequence } : null
      const device = newDevice(keys, idMaker(clock.now, randomPool())())
      const { kept, lost, altered, of } = carried(options, { from, to, range, device })
      from.close()
      to.close()
      writeKeys(folder, device)
      swapIn(folder, unfinished)
      const missing = lost.reduce((sum, one) => sum + one.to - one.from + 1, 0)
      return { setAside: aside, kept, lost: missing, altered: altered.length, of }
    } finally {
      from.close()
      to.close()
    }
  } catch (error) {
    throw faultOf(error, path)
  }
}

interface Carrying {
  readonly from: Database
  readonly to: Database
  readonly range: Range | null
  readonly device: ReturnType<typeof newDevice>
}

/** Fills the new file: the events, the read models, and what happened to it. */
function carried(
  { folder, store, projector, clock }: SalvageOptions,
  { from, to, range, device }: Carrying,
): Carried & Pick<SalvageReport, 'of'> {
  const random = randomPool()
  to.exec('BEGIN IMMEDIATE')
  migrate(to, folder)
  const all = carryOver(from, to, range)
  const log = logOf(to, device.device, random)
  rebuild(to, log, projector)
  to.exec('COMMIT')
  const models = readModelsOf(to, projector, log.before, false)
  const newId = idMaker(clock.now, random)
  const writer = writerOf({
    path: join(folder, 'records.salvaged.db'),
    store,
    clock,
    keys: device,
    database: to,
    log,
    models,
    newId,
    onSealed: () => {},
  })
  const bodies = [
    deviceAdded.make({ device: device.device, publicKey: device.publicKey }),
    recordsSalvaged.make({
      kept: all.kept,
      altered: all.altered.map(({ id }) => id),
      lost: [...all.lost],
    }),
  ]
  writer.keep(writer.stamp(CLINIC, bodies, PROGRAM))
  return { ...all, of: titlesOf(to, streamsOf(from, all)) }
}
