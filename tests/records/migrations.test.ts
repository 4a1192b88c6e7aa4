import { createHash } from 'node:crypto'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { type Database, openDatabase } from '../../main/records/database.ts'
import { logOf } from '../../main/records/log.ts'
import { MIGRATIONS, migrate, NEWEST } from '../../main/records/migration.ts'
import { READ_MODELS, readModelsOf } from '../../main/records/read-models.ts'
import { clientAdded, CLINIC, protocolKept, userAdded } from '../../main/records/index.ts'
import { event as deviceAdded } from '../../main/records/events/device-added.v1.ts'
import { event as storeCreated } from '../../main/records/events/store-created.v1.ts'
import type { Body } from '../../main/records/event-kind.ts'
import type { Stream } from '../../main/records/entry.ts'
import type { EventBody } from '../../protocols/runner/events.ts'
import { assignedTo, counting, folder, HASH, open, openedBy, profileOf, quietly, tap } from './clinic.ts'
import { faultOf } from './fault.ts'
import { raw } from './raw-file.ts'

const VERSIONS = join(import.meta.dirname, 'versions')
const numbers = MIGRATIONS.map((migration) => migration.number)
const fileOf = (number: number) => join(VERSIONS, `${String(number).padStart(4, '0')}.dump`)

/** A file as it lies in `versions/`: its keys, and its rows with bytes in base64. */
interface Dump {
  readonly keys: unknown
  readonly tables: Readonly<Record<string, readonly Readonly<Record<string, Cell>>[]>>
}
type Cell = string | number | null | { readonly base64: string }

const KEYS = {
  keys: 1,
  device: '019c2f6b-6a00-7a3e-8000-000000000001',
  seal: { kind: 'open' },
  secrets: {
    data: Buffer.alloc(32, 7).toString('base64'),
    device: 'MC4CAQAwBQYDK2VwBCIEIAcHBwcHBwcHBwcHBwcHBwcHBwcHBwcHBwcHBwcHBwcH',
  },
}
const id = (number: number) => `019c2f6b-6a00-7a3e-8000-${String(number).padStart(12, '0')}`
const NOTED: EventBody = { kind: 'noted', text: 'Noted.' }
const [ADA, ANN, GIVEN] = [id(2), id(3), id(4)]

/** What every dump holds: a user, a client, a test given. */
const sample: readonly (readonly [Stream, Body])[] = [
  [CLINIC, storeCreated.make({ store: 'clinic' })],
  [CLINIC, deviceAdded.make({ device: KEYS.device, publicKey: 'AAAA' })],
  [CLINIC, userAdded.make({ user: ADA, name: 'Ada' })],
  [
    CLINIC,
    protocolKept.make({
      hash: HASH,
      files: { 'protocol.yaml': 'evenhand: 1\nid: ring_board\n', 'norms/adults.csv': 'sex,mean\nF,10\n' },
    }),
  ],
  [{ kind: 'client', id: ANN }, clientAdded.make({ profile: profileOf('Ann Ångström', { number: 'K-1' }) })],
  ...[openedBy(ADA, 'Ada'), assignedTo(ANN), tap(1), tap(2), { kind: 'finished' } as const].map(
    (body) => [{ kind: 'administration', id: GIVEN }, body] as const,
  ),
]

/** The sample written by this program into a file of the given version, the same bytes every time. */
function written(number: number): Dump {
  const at = folder()
  const database = openDatabase(join(at, 'records.db'), Buffer.from(KEYS.secrets.data, 'base64'))
  migrate(database, at, number)
  let salts = 0
  const log = logOf(database, KEYS.device, () =>
    createHash('sha256')
      .update(`salt ${(salts += 1)}`)
      .digest(),
  )
  const has = new Set(database.prepare("SELECT name FROM sqlite_schema WHERE type = 'table'").pluck().all())
  const models = READ_MODELS.every((table) => has.has(table))
    ? readModelsOf(database, counting, log.before, true)
    : null
  sample.forEach(([stream, body], index) => {
    const stamped = {
      id: id(100 + index),
      at: '2026-03-02T10:00:00.000+01:00',
      user: ADA,
      stream,
      version: 1,
      body,
    }
    const entry = log.write(stamped, Date.UTC(2026, 2, 2, 9))
    if (entry) models?.take(entry)
  })
  const dump = { keys: KEYS, tables: rowsOf(database) }
  database.close()
  return dump
}

const cell = (value: unknown): Cell =>
  value instanceof Uint8Array ? { base64: Buffer.from(value).toString('base64') } : (value as Cell)

function rowsOf(database: Database): Dump['tables'] {
  const tables = database
    .prepare(
      "SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name",
    )
    .pluck()
    .all() as string[]
  return Object.fromEntries(
    tables.map((table) => [
      table,
      (database.prepare(`SELECT * FROM ${table}`).all() as Record<string, unknown>[]).map((row) =>
        Object.fromEntries(Object.entries(row).map(([column, value]) => [column, cell(value)])),
      ),
    ]),
  )
}

/** A folder with the file of an earlier version, as its program left it. */
function restored(number: number): string {
  const dump: Dump = JSON.parse(readFileSync(fileOf(number), 'utf8'))
  const at = folder()
  writeFileSync(join(at, 'keys.json'), JSON.stringify(dump.keys))
  raw(at, (database) => {
    migrate(database, at, number)
    for (const [table, rows] of Object.entries(dump.tables)) {
      for (const row of rows) {
        const values = Object.values(row).map((value) =>
          value !== null && typeof value === 'object' ? Buffer.from(value.base64, 'base64') : value,
        )
        const names = Object.keys(row)
        database
          .prepare(`INSERT INTO ${table} (${names.join(', ')}) VALUES (${names.map(() => '?').join(', ')})`)
          .run(...values)
      }
    }
  })
  return at
}

test('migrations are numbered from 1 without a gap', () => {
  expect(numbers).toEqual(numbers.map((_, index) => index + 1))
  expect(NEWEST).toBe(numbers.length)
})

test('every version has a stored file that a program of that version wrote', () => {
  for (const number of numbers) expect(existsSync(fileOf(number))).toBe(true)
})

test('the stored file of the newest version is what this program writes', async () => {
  await expect(`${JSON.stringify(written(NEWEST), null, 2)}\n`).toMatchFileSnapshot(fileOf(NEWEST))
})

test.each(numbers)('a file of version %i opens, verifies, is read, and goes on', async (number) => {
  const records = open(restored(number))
  expect((await records.verify(quietly)).problems).toEqual([])
  expect(records.device).toBe(KEYS.device)
  expect(records.read.users()).toEqual([{ id: ADA, name: 'Ada' }])
  expect(records.read.searchClients('angstrom', 5).found).toMatchObject([{ id: ANN }])
  expect(records.read.administration(GIVEN)).toMatchObject({ phase: 'finished', clientName: 'Ann Ångström' })
  expect(records.read.scoresOf(GIVEN)).toMatchObject([{ value: 2 }])
  records.append({ kind: 'administration', id: GIVEN }, [NOTED], ADA)
  expect(records.read.administration(GIVEN)?.note).toBe('Noted.')
  expect((await records.verify(quietly)).problems).toEqual([])
})

test('the stored schema is the one that the migrations give', async () => {
  const at = folder()
  open(at).close()
  const statements = raw(at, (database) =>
    database
      .prepare(
        "SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL AND name NOT LIKE 'client_search_%' ORDER BY name",
      )
      .pluck()
      .all(),
  ) as string[]
  const text = statements.map((sql) => `${sql.replace(/\n {4}/g, '\n')};\n`).join('\n')
  await expect(text).toMatchFileSnapshot('../../main/records/schema.sql')
})

test('every table is the log or a read model that a rebuild knows of', () => {
  const at = folder()
  open(at).close()
  const tables = raw(at, (database) => Object.keys(rowsOf(database)))
  expect(tables.toSorted()).toEqual(['event', ...READ_MODELS].toSorted())
})

test('a file of a newer program is left as it is', () => {
  const at = folder()
  open(at).close()
  raw(at, (database) => database.pragma(`user_version = ${NEWEST + 1}`))
  const before = readFileSync(join(at, 'records.db'))
  expect(faultOf(() => open(at))).toEqual({
    code: 'records.newer',
    detail: { path: join(at, 'records.db'), found: NEWEST + 1, known: NEWEST },
  })
  expect(readFileSync(join(at, 'records.db'))).toEqual(before)
})
