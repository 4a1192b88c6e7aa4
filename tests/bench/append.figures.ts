/** A durable append through the records, read models and domain included, beside the bare rows in the same file format. */
import { randomBytes } from 'node:crypto'
import { readFileSync, rmSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { default as Sqlite } from 'better-sqlite3'
import { test } from 'vitest'
import { addClient, begin, newFolder, openDesk, PEGS } from '../calls/desk.ts'
import { figure, turnAbout } from './measure.ts'

const COLUMNS =
  'id, device, sequence, clock, user, stream_kind, stream, kind, version, at, salt, body, digest, hash'

/** One more event of the kind that an administration is full of. */
const remark = (number: number) =>
  ({ kind: 'remarked', text: `The peg fell to the left, remark ${number}.` }) as const

/** The same file, opened without the program: one prepared insert of the event's row in a transaction. */
function bareFile(folder: string): { append(): void; close(): void } {
  const { secrets } = JSON.parse(readFileSync(join(folder, 'keys.json'), 'utf8'))
  const database = new Sqlite(join(folder, 'records.db'))
  const key = Buffer.from(secrets.data, 'base64')
  database.key(Buffer.from(`raw:${key.toString('hex')}`))
  database.pragma('locking_mode = EXCLUSIVE')
  database.pragma('journal_mode = WAL')
  database.pragma('synchronous = FULL')
  database.pragma('temp_store = MEMORY')
  database.pragma('foreign_keys = ON')
  const row = database
    .prepare(`SELECT ${COLUMNS} FROM event WHERE kind = 'remarked' LIMIT 1`)
    .raw()
    .get() as unknown[]
  const insert = database.prepare(`INSERT INTO event (${COLUMNS}) VALUES (${COLUMNS.replace(/\w+/g, '?')})`)
  let sequence = 1_000_000
  return {
    append: database.transaction(() => {
      sequence += 1
      const [, device, , clock, ...rest] = row
      insert.run(
        `bare-${sequence}`,
        device,
        sequence,
        `${String(clock)}${sequence}`,
        ...rest.slice(0, -4),
        randomBytes(16),
        ...rest.slice(-3),
      )
    }).immediate,
    close: () => database.close(),
  }
}

async function open(folder: string) {
  const desk = await openDesk({ folder })
  const { id } = await begin(desk, PEGS, await addClient(desk, 'Orla Fenwick'))
  desk.clinic.stores.records.append({ kind: 'administration', id }, [remark(0)], desk.user)
  return { desk, id }
}

const timed = (work: () => unknown): number => {
  const began = performance.now()
  work()
  return performance.now() - began
}

test('durable append of one event', async () => {
  const oursFolder = newFolder()
  const bareFolder = newFolder()
  const prepared = await open(bareFolder)
  prepared.desk.clinic.close()
  const bare = bareFile(bareFolder)
  const { desk, id } = await open(oursFolder)
  let number = 0
  const { ours, baseline } = await turnAbout(
    1500,
    () =>
      timed(() =>
        desk.clinic.stores.records.append({ kind: 'administration', id }, [remark((number += 1))], desk.user),
      ),
    () => timed(bare.append),
  )
  bare.close()
  desk.clinic.close()
  for (const folder of [oursFolder, bareFolder]) rmSync(dirname(folder), { recursive: true, force: true })
  figure('durable append, bare transaction / ours (speed kept)', baseline / ours, { least: 0.8 })
})
