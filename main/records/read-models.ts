/** Keeps the read models of one database in step with its log, an event at a time, within the caller's transaction. */
import type { EventBody } from '../../protocols/runner/events.ts'
import {
  ADMINISTRATION_TABLES,
  changesFacts,
  type Folded,
  fold,
  type Projector,
  rowsOf,
} from './administration.ts'
import type { Database } from './database.ts'
import type { Entry } from './entry.ts'
import { changesOf, PROJECTED_TABLES } from './projection.ts'
import { protocolFilesOf } from './protocol-files.ts'
import { tablesOf } from './tables.ts'

/** Every table that can be dropped and made again from the log. */
export const READ_MODELS: readonly string[] = [...PROJECTED_TABLES, ...ADMINISTRATION_TABLES]

type Opened = Extract<EventBody, { kind: 'opened' }>

/** How many administrations are held ready; a desk has one or two in hand. */
const HELD = 4

interface Held {
  readonly folded: Folded
  /** Events that were kept since and touch nothing: taken with the next one that does. */
  readonly waiting: readonly Entry[]
  /** The rows as last written, to write them again only when they differ. */
  readonly written: string
}

export interface ReadModels {
  /** Takes one event in the log's order. */
  take(entry: Entry): void
  /** Forgets what is held in memory, since a transaction was taken back. */
  forget(): void
  /** Empties every table. */
  empty(): void
}

function mustBeKept({ body }: Entry, filesOf: ReturnType<typeof protocolFilesOf>): void {
  const of = body as EventBody
  if (of.kind === 'opened' && !filesOf((of as Opened).protocol.hash)) {
    throw new TypeError('Keep the protocol before an administration is opened by it.')
  }
}

/**
 * @param earlier the events of an administration before this one, in order
 * @param strict throw where the projector can't take an event, rather than mark the administration unreadable
 */
export function readModelsOf(
  database: Database,
  projector: Projector<unknown>,
  earlier: (entry: Entry) => Iterable<Entry>,
  strict: boolean,
): ReadModels {
  const tables = tablesOf(database)
  const held = new Map<string, Held>()
  const filesOf = protocolFilesOf(database)

  const standing = (entry: Entry): Held | null => {
    const known = held.get(entry.stream.id)
    if (known) return known
    let folded: Folded | null = null
    for (const one of earlier(entry)) {
      // What lost its beginning is an administration of nobody knows what.
      if (!folded && one.kind !== 'opened') return null
      if (one.body) folded = fold(projector, filesOf, folded, one)
    }
    if (!folded) return null
    return { folded, waiting: [], written: JSON.stringify(rowsOf(projector, entry.stream.id, folded)) }
  }

  const hold = (id: string, one: Held) => {
    held.delete(id)
    held.set(id, one)
    const oldest = held.keys().next()
    if (held.size > HELD && !oldest.done) held.delete(oldest.value)
  }

  /** Facts of ours count as touched too; see `fold`. */
  const touches = (kind: string) => kind === 'opened' || changesFacts(kind) || projector.touches(kind)

  const takeAdministration = (entry: Entry) => {
    const id = entry.stream.id
    const before = standing(entry)
    // A log that is damaged may lack a beginning or hold two: the rest of it is still worked out.
    if (!strict && (entry.kind === 'opened') === (before !== null)) return
    if (before && !touches(entry.kind)) return hold(id, { ...before, waiting: [...before.waiting, entry] })
    if (strict && !before) mustBeKept(entry, filesOf)
    let stood = before?.folded ?? null
    for (const one of before?.waiting ?? []) stood = fold(projector, filesOf, stood, one)
    const folded = fold(projector, filesOf, stood, entry)
    // What was unreadable before must not keep the rest from being recorded.
    const breaks = 'broken' in folded.state && !(stood && 'broken' in stood.state)
    if (strict && breaks && 'broken' in folded.state) throw folded.state.broken
    const rows = rowsOf(projector, id, folded)
    const written = JSON.stringify(rows)
    if (written !== before?.written) tables.apply(rows)
    hold(id, { folded, waiting: [], written })
  }

  return {
    take(entry) {
      if (!entry.body) return
      if (entry.stream.kind === 'administration') takeAdministration(entry)
      else tables.apply(changesOf(entry))
    },
    forget: () => held.clear(),
    empty() {
      held.clear()
      for (const table of READ_MODELS.toReversed()) database.exec(`DELETE FROM ${table}`)
    },
  }
}
