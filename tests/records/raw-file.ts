/** The records file opened behind the program's back, to look inside or to do harm. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Database } from '../../main/records/database.ts'
import { openDatabase } from '../../main/records/database.ts'

const keyOf = (folder: string): Buffer =>
  Buffer.from(JSON.parse(readFileSync(join(folder, 'keys.json'), 'utf8')).secrets.data, 'base64')

export function raw<T>(folder: string, use: (database: Database) => T): T {
  const database = openDatabase(join(folder, 'records.db'), keyOf(folder))
  try {
    return use(database)
  } finally {
    database.close()
  }
}

/** Changes events although the file refuses it: what somebody could do who has the key and wants to cheat. */
export function tamper(
  folder: string,
  sql: string,
  ...values: (string | number | Uint8Array | null)[]
): void {
  raw(folder, (database) => {
    database.exec('DROP TRIGGER event_stays; DROP TRIGGER event_is_final;')
    database.prepare(sql).run(...values)
  })
}
