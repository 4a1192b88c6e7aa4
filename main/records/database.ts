/** The one module that knows the SQLite library: opening, settings, and what its refusals mean. */
import { existsSync, openSync, readSync, closeSync, statSync } from 'node:fs'
import { default as Sqlite } from 'better-sqlite3'
import { Refused } from '../contract/procedure.ts'

export type Database = Sqlite.Database
export type Value = string | number | Uint8Array | null

const PAGE = 4096
/** ms to wait for a process that is just letting go of the file. */
const PATIENCE = 500

const sqliteCode = (error: unknown): string => (error instanceof Sqlite.SqliteError ? error.code : '')

/** The library's own words for "the disk would not take it": full, broken, read-only, out of reach. */
const DISK = /^SQLITE_(FULL|IOERR|READONLY|CANTOPEN|PERM|NOMEM|NOLFS)/

/**
 * An error of the library as a fault of ours; anything else stays what it is.
 * - `records.disk-refused`: nothing was written; the same may be tried again.
 * - `records.damaged`: the file's pages contradict each other or were altered.
 * - `records.busy`: another program holds the file.
 */
export function faultOf(error: unknown, path: string): unknown {
  const code = sqliteCode(error)
  if (DISK.test(code)) return new Refused('records.disk-refused', { path, cause: code })
  if (damageOf(error)) return new Refused('records.damaged', { path, cause: code })
  if (code.startsWith('SQLITE_BUSY')) return new Refused('records.busy', { path })
  // The small files beside the records are written without the library, on the same disk.
  if (error instanceof Error && 'syscall' in error && 'code' in error) {
    return new Refused('records.disk-refused', { path, cause: String(error.code) })
  }
  return error
}

/** What the library says where pages contradict each other or were altered; null for any other error. */
export function damageOf(error: unknown): string | null {
  return /^SQLITE_(CORRUPT|NOTADB)/.test(sqliteCode(error)) ? sqliteCode(error) : null
}

/** Whether the file can't be an encrypted database at all: plain text, plain SQLite, or not whole pages. */
export function isSomethingElse(path: string): boolean {
  if (statSync(path).size % PAGE !== 0) return true
  const head = Buffer.alloc(16)
  const file = openSync(path, 'r')
  try {
    readSync(file, head, 0, head.length, 0)
  } finally {
    closeSync(file)
  }
  return head.toString('latin1').startsWith('SQLite format 3')
}

/**
 * Opens, or makes, an encrypted file and holds it for this process alone. Everything acknowledged is on disk:
 * write-ahead log, a full sync at every commit, temporary tables in memory so that nothing leaks past the key.
 * @param key 32 bytes
 * @throws Refused `records.busy`, `records.not-a-database`, `records.keys-mismatch`, `records.disk-refused`
 */
export function openDatabase(path: string, key: Uint8Array): Database {
  let database: Database | null = null
  try {
    database = new Sqlite(path, { timeout: PATIENCE })
    // The key comes first: any other statement would read the file without it. `raw:` takes it as it is.
    database.key(Buffer.from(`raw:${Buffer.from(key).toString('hex')}`))
    database.pragma('locking_mode = EXCLUSIVE')
    database.pragma('journal_mode = WAL')
    database.pragma('synchronous = FULL')
    database.pragma('temp_store = MEMORY')
    database.pragma('foreign_keys = ON')
    return database
  } catch (error) {
    database?.close()
    if (sqliteCode(error) !== 'SQLITE_NOTADB' || !existsSync(path)) throw faultOf(error, path)
    throw new Refused(isSomethingElse(path) ? 'records.not-a-database' : 'records.keys-mismatch', { path })
  }
}

/** An empty database in memory with the same rules: where read models are worked out anew to compare them. */
export function scratchDatabase(): Database {
  const database = new Sqlite(':memory:')
  database.pragma('foreign_keys = ON')
  return database
}
