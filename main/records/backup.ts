/**
 * Backups: each a folder of its own with the records file, encrypted under the same key, the keys beside it, what was
 * sealed last, and a note of what it holds. It gets its name only once it was opened and verified.
 */
import {
  closeSync,
  copyFileSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
} from 'node:fs'
import { join } from 'node:path'
import { z } from 'zod'
import { Refused } from '../contract/procedure.ts'
import type { Database } from './database.ts'
import { DATABASE, freePath, momentName } from './files.ts'
import { staying } from './rotation.ts'
import type { VerifyReport } from './verify.ts'
import { writeWhole } from './whole-file.ts'

const NOTE = 'backup.json'
const UNFINISHED = '.unfinished'
const PREFIX = 'backup-'

const note = z.strictObject({
  backup: z.literal(1),
  /** When it was made, RFC 3339 with offset. */
  at: z.string(),
  device: z.string(),
  events: z.int(),
})

export interface Backup {
  readonly folder: string
  readonly at: string
  readonly events: number
}

interface BackingUp {
  readonly database: Database
  /** The folder of the records. */
  readonly folder: string
  readonly device: string
  readonly at: string
  /** Opens a folder of records by itself and verifies it. */
  verify(folder: string): Promise<VerifyReport>
}

function toDisk(path: string): void {
  const file = openSync(path, 'r+')
  try {
    fsyncSync(file)
  } finally {
    closeSync(file)
  }
}

/**
 * Makes a backup in a folder and removes those that the rotation lets go of.
 * @param into made where it isn't there
 * @throws Refused `records.backup-unsound` where what was made doesn't verify: it is removed, older ones stay
 */
export async function backUp(parts: BackingUp, into: string): Promise<Backup> {
  const { database, folder, device, at } = parts
  mkdirSync(into, { recursive: true })
  for (const left of readdirSync(into).filter((name) => name.endsWith(UNFINISHED)))
    rmSync(join(into, left), { recursive: true, force: true })
  const made = freePath(join(into, `${PREFIX}${momentName(at)}`))
  const unfinished = `${made}${UNFINISHED}`
  mkdirSync(unfinished)
  try {
    // The library's own backup call can't read an encrypted file; this writes one under the same key.
    database.prepare('VACUUM INTO ?').run(join(unfinished, DATABASE))
    for (const name of ['keys.json', 'sealed.json']) {
      if (existsSync(join(folder, name))) copyFileSync(join(folder, name), join(unfinished, name))
    }
    toDisk(join(unfinished, DATABASE))
    const { problems, events } = await parts.verify(unfinished)
    const [wrong] = problems.filter(({ code }) => code !== 'unknown')
    if (wrong) throw new Refused('records.backup-unsound', { folder: into, cause: wrong.code })
    const written: z.infer<typeof note> = { backup: 1, at, device, events }
    writeWhole(join(unfinished, NOTE), `${JSON.stringify(written)}\n`)
    renameSync(unfinished, made)
    rotate(into)
    return { folder: made, at, events }
  } finally {
    rmSync(unfinished, { recursive: true, force: true })
  }
}

/** @throws Refused `records.no-backup` where the folder is none */
export function readBackup(folder: string): Backup {
  try {
    const { at, events } = note.parse(JSON.parse(readFileSync(join(folder, NOTE), 'utf8')))
    if (!existsSync(join(folder, DATABASE))) throw new Error('It has no records.')
    return { folder, at, events }
  } catch {
    throw new Refused('records.no-backup', { folder })
  }
}

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder)
  } catch {
    return []
  }
}

/** The backups in a folder, the newest first; none where there is no such folder, or it can't be read. */
export function backupsIn(into: string): Backup[] {
  return namesIn(into)
    .filter((name) => name.startsWith(PREFIX) && !name.endsWith(UNFINISHED))
    .flatMap((name) => {
      try {
        return [readBackup(join(into, name))]
      } catch {
        // Whatever else lies there is left alone.
        return []
      }
    })
    .toSorted((a, b) => (a.at < b.at ? 1 : -1))
}

function rotate(into: string): void {
  const all = backupsIn(into)
  const stay = staying(all.map(({ at }) => at))
  for (const { folder, at } of all) if (!stay.has(at)) rmSync(folder, { recursive: true, force: true })
}
