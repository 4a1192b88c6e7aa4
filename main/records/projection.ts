/**
 * Read models: tables that say how things stand, worked out from events and nothing else. A projection is a
 * pure function from one event to changes of rows; it never reads a table, so the same events always give the
 * same rows and every table can be dropped and made again.
 */
import type { Entry } from './entry.ts'
import type { Change, Projection } from './projection-kind.ts'

const files = import.meta.glob<{ projection: Projection }>('./projections/*.ts', { eager: true })
const projections = Object.values(files).map((file) => file.projection)

/** The tables of client and clinic streams. */
export const PROJECTED_TABLES: readonly string[] = projections.flatMap((projection) => projection.tables)

const byKind = Map.groupBy(
  projections.flatMap((projection) => projection.on),
  (one) => `${one.kind}.v${one.version}`,
)

/** What an event of a client or of the clinic changes; nothing where it was erased or no projection knows it. */
export function changesOf(entry: Entry): readonly Change[] {
  if (!entry.body) return []
  const body = entry.body as never
  return (byKind.get(`${entry.kind}.v${entry.version}`) ?? []).flatMap((one) => one.changes(entry, body))
}
