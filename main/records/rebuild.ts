import type { Projector } from './administration.ts'
import type { Database } from './database.ts'
import { type EventRow, entryOf, type Log } from './log.ts'
import { type ReadModels, readModelsOf } from './read-models.ts'

/** How many events are in memory at a time. */
export const CHUNK = 500

/** Takes the log's events after `last` into read models, one chunk of them. @returns the last one, null at the end */
export function takeChunk(models: ReadModels, log: Log, last: EventRow | null): EventRow | null {
  const rows = log.after(last, CHUNK)
  for (const row of rows) models.take(entryOf(row))
  return rows.at(-1) ?? null
}

/** Drops all rows of all read models and works them out anew, within the caller's transaction. */
export function rebuild(database: Database, log: Log, projector: Projector<unknown>): void {
  const models = readModelsOf(database, projector, log.before, false)
  models.empty()
  let last: EventRow | null = null
  do last = takeChunk(models, log, last)
  while (last)
}
