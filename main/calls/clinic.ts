/**
 * The program's application layer: one clinic with its records, its rehearsals, which never mix with them, and
 * its shelf of protocols. Hosts open one; the handlers of the contract's calls work on it.
 */
import { randomBytes } from 'node:crypto'
import { existsSync, mkdirSync, renameSync, rmSync, watch } from 'node:fs'
import { join } from 'node:path'
import { Refused } from '../contract/procedure.ts'
import type { Push } from '../contract/pushes.ts'
import {
  openRecords,
  type Records,
  type SalvageReport,
  type VisitRow,
  type WallClock,
} from '../records/index.ts'
import { seedDemo, storyClock } from './demo/seed.ts'
import type { Stores } from './keeping.ts'
import { Live } from './live.ts'
import { openSalvaged } from './open-salvaged.ts'
import { projector } from './projector.ts'
import { createShelf, type Shelf } from './shelf.ts'
import { Upkeep } from './upkeep.ts'

export interface Clinic {
  readonly demo: boolean
  /** Where the records lie. */
  readonly folder: string
  /** Where the clinic puts protocols of its own. */
  readonly ownProtocols: string
  /** What became of the records’ file at this start, where it was damaged. */
  readonly salvaged: SalvageReport | null
  readonly stores: Stores
  readonly shelf: Shelf
  readonly live: Live
  readonly upkeep: Upkeep
  /** Today's civil date where the clinic is. */
  today(): string
  /** The visit that is open at this desk; at most one is. */
  openVisit(): VisitRow | null
  push(push: Push): void
  /** Hears every push until the returned function is called. */
  listen(listener: (push: Push) => void): () => void
  close(): void
}

interface ClinicParts {
  /** Made where it isn't there. */
  readonly folder: string
  readonly library: string
  readonly demo: boolean
  readonly clock: WallClock
}

/** ms in which several changes to the folder of protocols count as one. */
const SETTLED = 200
const RANDOM_BYTES = 6

const unforeseeable = () => randomBytes(RANDOM_BYTES).readUIntBE(0, RANDOM_BYTES) / 256 ** RANDOM_BYTES

/** The parts of a clinic's folder. */
export const rehearsalFolder = (folder: string) => join(folder, 'rehearsal')
const ownProtocolsFolder = (folder: string) => join(folder, 'protocols')
const ownWordsFolder = (folder: string) => join(folder, 'words')

/**
 * Opens a clinic's folder; a demo clinic that isn't there yet is made with its story.
 * @throws Refused `records.…` where the folder can't be used
 */
export function openClinic({ folder, library, demo, clock }: ClinicParts): Clinic {
  if (demo && !existsSync(folder)) makeDemo(folder, library, clock)
  const { records, salvaged } = openSalvaged({ folder, store: demo ? 'demo' : 'clinic', projector, clock })
  let rehearsal: Records
  try {
    rehearsal = openSalvaged({
      folder: rehearsalFolder(folder),
      store: 'rehearsal',
      projector,
      clock,
    }).records
  } catch (error) {
    records.close()
    throw error
  }
  const stores = { records, rehearsal }
  const ownProtocols = ownProtocolsFolder(folder)
  const ownWords = ownWordsFolder(folder)
  for (const own of [ownProtocols, ownWords]) if (!existsSync(own)) mkdirSync(own)

  const listeners = new Set<(push: Push) => void>()
  const push = (one: Push) => {
    for (const listener of listeners) listener(one)
  }
  const live = new Live({ stores, push, random: unforeseeable })
  const upkeep = new Upkeep({ folder, records, salvaged, changed: () => push({ push: 'clinic' }) })
  const unwatch = [ownProtocols, ownWords].map((own) => watchFolder(own, () => push({ push: 'protocols' })))
  return {
    demo,
    folder,
    ownProtocols,
    salvaged,
    stores,
    live,
    upkeep,
    shelf: createShelf({ library, clinic: ownProtocols, words: ownWords }),
    today: () => records.now().slice(0, 10),
    openVisit: () => records.read.openVisits()[0] ?? null,
    push,
    listen(listener) {
      listeners.add(listener)
      return () => void listeners.delete(listener)
    },
    close() {
      for (const stop of unwatch) stop()
      upkeep.close()
      live.close()
      rehearsal.close()
      records.close()
    },
  }
}

/** Made beside its place and moved there when it is whole: one that was cut short is never opened. */
function makeDemo(folder: string, library: string, clock: WallClock): void {
  const unfinished = `${folder}.unfinished`
  rmSync(unfinished, { recursive: true, force: true })
  const story = storyClock(clock)
  const records = openRecords({ folder: unfinished, store: 'demo', projector, clock: story })
  try {
    seedDemo(
      records,
      createShelf({
        library,
        clinic: ownProtocolsFolder(unfinished),
        words: ownWordsFolder(unfinished),
      }),
      story,
    )
  } finally {
    records.close()
  }
  renameSync(unfinished, folder)
}

/** Tells of changes anywhere in a folder; a system that can't watch just waits for the next asking. */
function watchFolder(folder: string, changed: () => void): () => void {
  let timer: NodeJS.Timeout | null = null
  try {
    const watcher = watch(folder, { recursive: true, persistent: false }, () => {
      timer ??= setTimeout(() => {
        timer = null
        changed()
      }, SETTLED)
    })
    watcher.on('error', () => watcher.close())
    return () => {
      if (timer) clearTimeout(timer)
      watcher.close()
    }
  } catch {
    return () => {}
  }
}

/**
 * Keeps other clients out of sight while a visit is open: the client at the desk reads along.
 * @throws Refused `wrong_client` where a record of somebody else is asked for
 */
export function checkInSight(clinic: Clinic, client: string | null): void {
  const visit = clinic.openVisit()
  if (visit && client !== null && client !== visit.client) throw new Refused('wrong_client')
}
