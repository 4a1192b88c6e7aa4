/**
 * Numbered changes of the file's shape, found by listing `migrations/`. The number is the file name's; one that
 * has landed is never edited, since files of every earlier shape are out there and must open for years.
 */
import { Refused } from '../contract/procedure.ts'
import type { Database } from './database.ts'

export interface Migration {
  /** Statements that take a file from the number before to this one. */
  readonly sql: string
  /** Whether read models have to be worked out anew from the log afterwards. */
  readonly rebuilds: boolean
}

/** "EVHD" in ASCII: tells our files from other databases. */
const APPLICATION_ID = 0x45564844

const files = import.meta.glob<{ migration: Migration }>('./migrations/*.ts', { eager: true })

export const MIGRATIONS: readonly (Migration & { readonly number: number; readonly name: string })[] =
  Object.entries(files)
    .map(([path, file]) => {
      const name = path.replace(/^.*\/|\.ts$/g, '')
      return { ...file.migration, name, number: Number.parseInt(name, 10) }
    })
    .sort((a, b) => a.number - b.number)

export const NEWEST = MIGRATIONS.at(-1)?.number ?? 0

const numberOf = (database: Database) => Number(database.pragma('user_version', { simple: true }))

/**
 * Brings a file up to `to` in one transaction: all of it or nothing.
 * @returns whether read models must be worked out anew before use
 * @throws Refused `records.newer` for a file of a newer program, `records.not-a-database` for another program's
 */
export function migrate(database: Database, path: string, to: number = NEWEST): boolean {
  const from = numberOf(database)
  if (from > 0 && Number(database.pragma('application_id', { simple: true })) !== APPLICATION_ID) {
    throw new Refused('records.not-a-database', { path })
  }
  if (from > NEWEST) throw new Refused('records.newer', { path, found: from, known: NEWEST })
  const due = MIGRATIONS.filter((migration) => migration.number > from && migration.number <= to)
  if (due.length === 0) return false
  database.pragma(`application_id = ${APPLICATION_ID}`)
  for (const migration of due) database.exec(migration.sql)
  database.pragma(`user_version = ${to}`)
  return due.some((migration) => migration.rebuilds)
}
