/** Writing: how bodies become events and how those come to the disk, all of a batch or none. */
import { bodyBytes } from './chain.ts'
import { type Database, faultOf } from './database.ts'
import type { Entry, Stamped, Stream } from './entry.ts'
import type { Body } from './event-kind.ts'
import { checkedVersion } from './events.ts'
import type { Log } from './log.ts'
import type { ReadModels } from './read-models.ts'
import type { StoreKind } from './stores.ts'
import { localTime, type WallClock } from './wall-clock.ts'

export interface Writer {
  stamp(stream: Stream, bodies: readonly Body[], user: string): Stamped[]
  keep(stamped: readonly Stamped[]): Entry[]
}

export interface WriterParts {
  readonly path: string
  readonly store: StoreKind
  readonly clock: WallClock
  readonly database: Database
  readonly log: Log
  readonly models: ReadModels
  readonly newId: () => string
}

/** The same id with another body would be a lost event: it is never taken for a retry. */
function repeated(known: Entry | null, stamped: Stamped): Entry {
  if (!known) throw new Error(`The event ${stamped.id} was neither written nor found.`)
  if (known.body && !bodyBytes(known.body).equals(bodyBytes(stamped.body))) {
    throw new TypeError(`Another event is kept under the id ${stamped.id}.`)
  }
  return known
}

export function writerOf({ path, store, clock, database, log, models, newId }: WriterParts): Writer {
  const one = (stamped: Stamped): Entry => {
    // Written first and looked up only if it is there already: nearly every event is new.
    const entry = log.write(stamped, clock.now())
    if (!entry) return repeated(log.byId(stamped.id), stamped)
    models.take(entry)
    return entry
  }
  const write = database.transaction((stamped: readonly Stamped[]) => stamped.map(one))
  return {
    stamp(stream, bodies, user) {
      return bodies.map((body) => {
        const version = checkedVersion(stream.kind, body)
        if (body.kind === 'opened' && 'rehearsal' in body && body.rehearsal !== (store === 'rehearsal')) {
          throw new TypeError('A rehearsal is kept in the rehearsal store, and nothing else is.')
        }
        const now = clock.now()
        const at = localTime(now, clock.offsetMinutes(now))
        return { id: newId(), at, user, stream, version, body }
      })
    },
    keep(stamped) {
      const back = log.mark()
      try {
        return write.immediate(stamped)
      } catch (error) {
        models.forget()
        back()
        throw faultOf(error, path)
      }
    },
  }
}
