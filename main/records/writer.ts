/** Writing: how bodies become events and how those come to the disk, all of a batch or none. */
import { statSync } from 'node:fs'
import { Refused } from '../contract/procedure.ts'
import { bodyBytes } from './chain.ts'
import { type Database, faultOf } from './database.ts'
import type { Entry, Stamped, Stream } from './entry.ts'
import type { Body } from './event-kind.ts'
import { checkedVersion } from './events.ts'
import { event as administrationSealed } from './events/administration-sealed.v1.ts'
import type { Keys } from './keys.ts'
import type { Log } from './log.ts'
import type { ReadModels } from './read-models.ts'
import { sealBytes } from './seal.ts'
import type { StoreKind } from './stores.ts'
import { CLINIC, PROGRAM } from './streams.ts'
import { localTime, type WallClock } from './wall-clock.ts'

export interface Writer {
  stamp(stream: Stream, bodies: readonly Body[], user: string): Stamped[]
  keep(stamped: readonly Stamped[]): Entry[]
}

export interface WriterParts {
  readonly path: string
  readonly store: StoreKind
  readonly clock: WallClock
  readonly keys: Keys
  /** Told after a batch that ended in a seal is on disk. */
  readonly onSealed: () => void
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

/** The signed head of this device's chain as it stands, for an administration that has ended. */
function sealBody({ log, keys }: Pick<WriterParts, 'log' | 'keys'>, administration: string): Body {
  const head = log.head()
  if (!head) throw new Error('There is nothing to seal before the first event.')
  const signature = keys.sign(sealBytes({ device: keys.device, ...head })).toString('base64')
  return administrationSealed.make({ administration, ...head, signature })
}

export function writerOf(parts: WriterParts): Writer {
  const { path, store, clock, database, log, models, newId } = parts
  const one = (stamped: Stamped): Entry => {
    // Written first and looked up only if it is there already: nearly every event is new.
    const entry = log.write(stamped, clock.now())
    if (!entry) return repeated(log.byId(stamped.id), stamped)
    models.take(entry)
    added.add(stamped.stream.kind === 'administration' ? stamped.stream.id : '')
    return entry
  }
  const { ino } = statSync(path)
  /** A file that was removed or moved takes events without a word, and they are nowhere: that is the disk's refusal. */
  const isGone = (): Refused | null => {
    const there = statSync(path, { throwIfNoEntry: false })
    return there?.ino === ino ? null : new Refused('records.disk-refused', { path, cause: 'ENOENT' })
  }
  const hasEnded = database.prepare<[string]>(
    'SELECT 1 FROM administration WHERE id = ? AND (finished_at IS NOT NULL OR withdrawn = 1)',
  )
  /** Streams that the batch in hand has added to. */
  const added = new Set<string>()
  const write = database.transaction((stamped: readonly Stamped[]) => {
    added.clear()
    const entries = stamped.map(one)
    const ended = [...added].filter((id) => id !== '' && hasEnded.get(id))
    for (const id of ended) stampAll(CLINIC, [sealBody(parts, id)], PROGRAM).map(one)
    return { entries, isSealed: ended.length > 0 }
  })
  const stampAll: Writer['stamp'] = (stream, bodies, user) =>
    bodies.map((body) => {
      const version = checkedVersion(stream.kind, body)
      if (body.kind === 'opened' && 'rehearsal' in body && body.rehearsal !== (store === 'rehearsal')) {
        throw new TypeError('A rehearsal is kept in the rehearsal store, and nothing else is.')
      }
      const now = clock.now()
      const at = localTime(now, clock.offsetMinutes(now))
      return { id: newId(), at, user, stream, version, body }
    })
  return {
    stamp: stampAll,
    keep(stamped) {
      const gone = isGone()
      if (gone) throw gone
      const back = log.mark()
      let written: ReturnType<typeof write.immediate>
      try {
        written = write.immediate(stamped)
      } catch (error) {
        models.forget()
        back()
        throw faultOf(error, path)
      }
      if (written.isSealed) parts.onSealed()
      return written.entries
    },
  }
}
