/** Reading the events of a file of which parts can't be read. */
import { type Database, damageOf } from './database.ts'
import type { EventRow } from './log.ts'

/** Rows of the log in the order in which they were written, whatever can be read of them. */
export function* readableRows(database: Database): Generator<EventRow> {
  const rows = database.prepare<[number, number], EventRow>(
    'SELECT * FROM event NOT INDEXED WHERE rowid BETWEEN ? AND ? ORDER BY rowid',
  )
  const last = lastRow(database)
  const piece = 256
  for (let from = 1; from <= last; from += piece) yield* between(from, Math.min(last, from + piece - 1))

  function between(from: number, to: number): EventRow[] {
    try {
      return rows.all(from, to)
    } catch (error) {
      if (damageOf(error) === null) throw error
      if (from === to) return []
      const middle = Math.floor((from + to) / 2)
      return [...between(from, middle), ...between(middle + 1, to)]
    }
  }
}

/** A number that no row's number exceeds. */
function lastRow(database: Database): number {
  try {
    const found = database.prepare<[], { last: number | null }>('SELECT max(rowid) AS last FROM event').get()
    return found?.last ?? 0
  } catch (error) {
    if (damageOf(error) === null) throw error
    // An event takes at least so many bytes, so that many rows at most are in the file.
    const LEAST_BYTES = 256
    const pages = Number(database.pragma('page_count', { simple: true }))
    return Math.ceil((pages * 4096) / LEAST_BYTES)
  }
}
