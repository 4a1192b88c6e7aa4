import { existsSync, mkdirSync, accessSync, constants } from 'node:fs'
import { dirname, join } from 'node:path'
import type { Recorded } from '../../protocols/runner/events.ts'
import { Refused } from '../contract/procedure.ts'

import type { Projector } from './administration.ts'
import { type Backup, backUp } from './backup.ts'
import { type Database, faultOf, isSomethingElse, openDatabase } from './database.ts'
import type { Entry, Stamped, Stream } from './entry.ts'
import type { Body } from './event-kind.ts'
import { event as deviceAdded } from './events/device-added.v1.ts'
import { event as storeCreated } from './events/store-created.v1.ts'
import { DATABASE } from './files.ts'
import { heldFault, removeHolder, wasHeld, writeHolder } from './holder.ts'
import { idMaker } from './ids.ts'
import { type Keys, makeKeys, readKeys } from './keys.ts'
import { type Log, logOf } from './log.ts'
import { migrate } from './migration.ts'
import { type ReadModels, readModelsOf } from './read-models.ts'
import { clearDamaged, markDamaged, quickCheck } from './quick-check.ts'
import { randomPool } from './random-pool.ts'
import { readsOf } from './reads.ts'
import { rebuild } from './rebuild.ts'
import type { Reads } from './rows.ts'
import type { StoreKind } from './stores.ts'
import { CLINIC, PROGRAM } from './streams.ts'
import { type VerifyOptions, type VerifyReport, verify } from './verify.ts'
import { localTime, type WallClock } from './wall-clock.ts'
import { readWitness, writeWitness } from './witness.ts'
import { type Writer, writerOf } from './writer.ts'

export interface OpenOptions {
  /** Made where it isn't there. */
  readonly folder: string
  /** A file remembers which store it is and opens as no other. */
  readonly store: StoreKind
  /** The domain's part of the read models of administrations. */
  readonly projector: Projector<unknown>
  readonly clock: WallClock
  /** Opens what looks damaged too, to look into it; nothing may be written then. */
  readonly examines?: boolean
}

/**
 * An open file of records. Everything is synchronous, and what `keep`, `append` and `rebuild` acknowledge is on
 * disk. Faults of the world are `Refused` (main/contract) with a code `records.…`; misuse throws a TypeError.
 */
export interface Records {
  readonly store: StoreKind
  readonly device: string
  /** Whether the program that had them open before was cut short: a full check is due. */
  readonly cutShort: boolean
  readonly read: Reads
  /** A new id: UUIDv7. */
  newId(): string
  /** The wall time now, RFC 3339 with offset; its first ten characters are today's civil date. */
  now(): string
  /**
   * Gives bodies their ids and their time. Writes nothing.
   * @throws TypeError where a body is not an event of that stream
   */
  stamp(stream: Stream, bodies: readonly Body[], user: string): Stamped[]
  /**
   * Writes events, all of them or none. One that is already kept (same id) is not written again, so an append
   * that failed, or of which nobody knows whether it did, may simply be tried again.
   * @throws Refused `records.disk-refused` where the disk doesn't take it: nothing was written
   */
  keep(stamped: readonly Stamped[]): Entry[]
  /** `stamp` and `keep` in one. */
  append(stream: Stream, bodies: readonly Body[], user: string): Entry[]
  /** A stream's events in order. */
  stream(of: Stream): Entry[]
  /** The events of an administration as the domain takes them; empty where there is none. */
  administration(id: string): Recorded[]
  /** Works out every read model anew from the log. */
  rebuild(): void
  /** Checks everything that can be checked; see `verify.ts`. */
  verify(options: VerifyOptions): Promise<VerifyReport>
  /**
   * Makes a backup in a folder, opens and verifies it, and lets go of older ones by the rotation.
   * @throws Refused `records.backup-unsound`, `records.disk-refused`
   */
  backUp(into: string): Promise<Backup>
  close(): void
}

/** Step by step: Node's own `recursive` never comes back where a file system takes no folders, such as `/proc`. */
function makeFolder(folder: string): void {
  if (existsSync(folder)) return
  makeFolder(dirname(folder))
  mkdirSync(folder)
}

function folderReady(folder: string): void {
  try {
    makeFolder(folder)
    accessSync(folder, constants.R_OK | constants.W_OK | constants.X_OK)
  } catch (error) {
    throw new Refused('records.folder-not-writable', {
      folder,
      cause: (error as NodeJS.ErrnoException).code ?? '',
    })
  }
}

/** The folder's keys, made where the folder is new. Keys come before the file, so no file is ever without. */
function keysOf(folder: string, path: string, newId: () => string): Keys {
  const keys = readKeys(folder)
  if (keys) return keys
  if (!existsSync(path)) return makeKeys(folder, newId())
  throw new Refused(isSomethingElse(path) ? 'records.not-a-database' : 'records.keys-missing', { path })
}

function opened(folder: string, path: string, key: Uint8Array): Database {
  try {
    return openDatabase(path, key)
  } catch (error) {
    if (error instanceof Refused && error.fault.code === 'records.busy') throw heldFault(folder)
    throw error
  }
}

/** All parts of an open file that its verbs work on. */
interface Parts {
  readonly options: OpenOptions
  readonly path: string
  readonly database: Database
  readonly keys: Keys
  readonly log: Log
  readonly models: ReadModels
  readonly writer: Writer
  readonly read: Reads
  readonly cutShort: boolean
  readonly random: (bytes: number) => Uint8Array
  readonly newId: () => string
}

/**
 * Opens the records of a folder, or begins new ones, and holds them for this process alone.
 * @throws Refused with one of: `records.folder-not-writable`, `records.not-a-database`, `records.keys-missing`,
 *   `records.keys-unreadable`, `records.keys-mismatch`, `records.in-use`, `records.newer`,
 *   `records.other-store`, `records.disk-refused`, `records.damaged`. Nothing was changed or overwritten.
 */
export function openRecords(options: OpenOptions): Records {
  const { folder, clock } = options
  const path = join(folder, DATABASE)
  folderReady(folder)
  const random = randomPool()
  const newId = idMaker(clock.now, random)
  let database: Database | null = null
  try {
    const keys = keysOf(folder, path, newId)
    database = opened(folder, path, keys.data)
    return recordsOf(ready({ options, path, database, keys, random, newId }))
  } catch (error) {
    database?.close()
    throw faultOf(error, path)
  }
}

/** Brings the file up to date and checks that it is the one that was asked for. */
function ready(of: Pick<Parts, 'options' | 'path' | 'database' | 'keys' | 'random' | 'newId'>): Parts {
  const { options, path, database, keys } = of
  const { folder, clock } = options
  const projector = options.projector
  database.exec('BEGIN IMMEDIATE')
  const due = migrate(database, path)
  const log = logOf(database, keys.device, of.random)
  const wrong = options.examines ? null : quickCheck(folder, keys, log)
  if (wrong) throw new Refused('records.damaged', { path, cause: wrong })
  const models = readModelsOf(database, projector, log.before, true)
  if (due) rebuild(database, log, projector)
  database.exec('COMMIT')
  const writer = writerOf({
    path,
    store: options.store,
    clock,
    keys,
    database,
    log,
    models,
    newId: of.newId,
    onSealed: () => witness(folder, keys, log),
  })
  const parts: Parts = { ...of, log, models, writer, cutShort: wasHeld(folder), read: readsOf(database) }
  begin(parts)
  writeHolder(folder, localTime(clock.now(), clock.offsetMinutes(clock.now())))
  return parts
}

function witness(folder: string, keys: Keys, log: Log): void {
  const head = log.head()
  if (head) writeWitness(folder, keys, head)
}

/** The first events of a new file and of a device that is new to it. */
function begin(parts: Parts): void {
  const { database, keys, options, writer } = parts
  const store = database.prepare<[], { kind: StoreKind }>('SELECT kind FROM store').get()
  if (store && store.kind !== options.store) {
    throw new Refused('records.other-store', {
      folder: options.folder,
      found: store.kind,
      asked: options.store,
    })
  }
  const known = database.prepare('SELECT 1 FROM device WHERE id = ?').get(keys.device)
  const bodies = [
    ...(store ? [] : [storeCreated.make({ store: options.store })]),
    ...(known ? [] : [deviceAdded.make({ device: keys.device, publicKey: keys.publicKey })]),
  ]
  if (bodies.length) writer.keep(writer.stamp(CLINIC, bodies, PROGRAM))
}

function recordsOf(parts: Parts): Records {
  const { options, path, database, keys, log, models, read, newId, writer } = parts
  const { clock } = options
  const projector = options.projector
  const now = () => localTime(clock.now(), clock.offsetMinutes(clock.now()))
  return {
    store: options.store,
    device: keys.device,
    cutShort: parts.cutShort,
    read,
    newId,
    now,
    stamp: writer.stamp,
    keep: writer.keep,
    append: (stream, bodies, user) => writer.keep(writer.stamp(stream, bodies, user)),
    stream: (of) => log.stream(of),
    administration: (id) => recordedOf(log.stream({ kind: 'administration', id })),
    rebuild() {
      try {
        models.forget()
        database.transaction(() => rebuild(database, log, projector)).immediate()
      } catch (error) {
        throw faultOf(error, path)
      }
    },
    async verify(asked) {
      const own = { device: keys.device, publicKey: keys.publicKey }
      const seals = { own, witness: readWitness(options.folder, keys) }
      const report = await verify(database, log, projector, seals, asked)
      // What only a newer program can read is no damage.
      if (report.problems.some(({ code }) => code !== 'unknown')) markDamaged(options.folder, now())
      else clearDamaged(options.folder)
      return report
    },
    async backUp(into) {
      witness(options.folder, keys, log)
      const check = async (copy: string) => {
        const records = openRecords({ ...options, folder: copy, examines: true })
        try {
          return await records.verify({ progress: () => {}, signal: new AbortController().signal })
        } finally {
          records.close()
        }
      }
      try {
        const { folder } = options
        return await backUp({ database, folder, device: keys.device, at: now(), verify: check }, into)
      } catch (error) {
        throw faultOf(error, into)
      }
    },
    close() {
      if (!database.open) return
      if (!options.examines) witness(options.folder, keys, log)
      removeHolder(options.folder)
      database.close()
    },
  }
}

function recordedOf(entries: readonly Entry[]): Recorded[] {
  return entries.flatMap(({ id, at, user, body }) =>
    body ? [{ id, at, user, body: body as Recorded['body'] }] : [],
  )
}
