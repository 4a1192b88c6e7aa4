/** Putting a backup in the place of records. What it replaces is set aside, never overwritten. */
import { copyFileSync, existsSync, mkdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { Refused } from '../contract/procedure.ts'
import type { Projector } from './administration.ts'
import { type Backup, readBackup } from './backup.ts'
import { faultOf, openDatabase } from './database.ts'
import { DATABASE, removeDatabase, setAside, swapIn } from './files.ts'
import { idMaker } from './ids.ts'
import { type Keys, newDevice, readKeys, writeKeys } from './keys.ts'
import { openRecords } from './open.ts'
import { randomPool } from './random-pool.ts'
import type { StoreKind } from './stores.ts'
import { localTime, type WallClock } from './wall-clock.ts'

interface RestoreOptions {
  /** Where the records are, or shall be. */
  readonly folder: string
  readonly store: StoreKind
  readonly projector: Projector<unknown>
  readonly clock: WallClock
  /** Goes on although the records hold events that the backup hasn't. */
  readonly replaces: boolean
}

export interface Restored extends Backup {
  /** Where what it replaced lies now; null where nothing was there. */
  readonly setAside: string | null
}

type Sequences = ReadonlyMap<string, number>

function sequencesIn(path: string, keys: Keys): Sequences {
  const database = openDatabase(path, keys.data)
  try {
    const rows = database
      .prepare<[], { device: string; sequence: number }>(
        'SELECT device, max(sequence) AS sequence FROM event GROUP BY device',
      )
      .all()
    return new Map(rows.map(({ device, sequence }) => [device, sequence]))
  } finally {
    database.close()
  }
}

/** How many events the records have that the backup hasn't; null where they can't be read. */
function newerThan(folder: string, backup: Sequences): number | null {
  try {
    const keys = readKeys(folder)
    if (!keys) return null
    const there = sequencesIn(join(folder, DATABASE), keys)
    return [...there].reduce((sum, [device, to]) => sum + Math.max(0, to - (backup.get(device) ?? 0)), 0)
  } catch (error) {
    if (error instanceof Refused && error.fault.code === 'records.busy') throw error
    return null
  }
}

/**
 * Verifies a backup, sets aside what is in the folder, and puts the backup in its place. The machine becomes a new
 * device: its old chain may have gone on after the backup, and two chains under one name could not be told apart.
 * @throws Refused `records.no-backup`, `records.backup-unsound`, `records.newer-there`, `records.busy` and those of
 *   opening: nothing was changed
 */
export async function restore(backup: string, options: RestoreOptions): Promise<Restored> {
  const { folder, clock } = options
  const found = readBackup(backup)
  const now = localTime(clock.now(), clock.offsetMinutes(clock.now()))
  mkdirSync(folder, { recursive: true })
  const copy = join(folder, 'restored.unfinished')
  try {
    rmSync(copy, { recursive: true, force: true })
    mkdirSync(copy)
    for (const name of [DATABASE, 'keys.json', 'sealed.json']) {
      if (existsSync(join(backup, name))) copyFileSync(join(backup, name), join(copy, name))
    }
    const keys = await verified(copy, options)
    const isThere = existsSync(join(folder, DATABASE))
    const newer = isThere ? newerThan(folder, sequencesIn(join(copy, DATABASE), keys)) : 0
    if (newer !== 0 && !options.replaces) {
      throw new Refused('records.newer-there', { folder, events: newer ?? -1, at: found.at })
    }
    const aside = isThere ? setAside(folder, now) : null
    writeKeys(folder, newDevice(keys, idMaker(clock.now, randomPool())()))
    swapIn(folder, join(copy, DATABASE))
    return { ...found, setAside: aside }
  } catch (error) {
    throw faultOf(error, folder)
  } finally {
    removeDatabase(join(copy, DATABASE))
    rmSync(copy, { recursive: true, force: true })
  }
}

/** @returns the keys of a copy of a backup that is sound */
async function verified(copy: string, { store, projector, clock }: RestoreOptions): Promise<Keys> {
  const records = openRecords({ folder: copy, store, projector, clock, examines: true })
  try {
    const quietly = { progress: () => {}, signal: new AbortController().signal }
    const [wrong] = (await records.verify(quietly)).problems.filter(({ code }) => code !== 'unknown')
    if (wrong) throw new Refused('records.backup-unsound', { folder: copy, cause: wrong.code })
  } finally {
    records.close()
  }
  const keys = readKeys(copy)
  if (!keys) throw new Refused('records.keys-missing', { path: join(copy, DATABASE) })
  return keys
}
