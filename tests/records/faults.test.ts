import { chmodSync, cpSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { default as Sqlite } from 'better-sqlite3'
import { expect, test } from 'vitest'
import { Refused } from '../../main/contract/procedure.ts'
import { addUser, folder, furnished, open, quietly } from './clinic.ts'
import { faultOf } from './fault.ts'
import { runWriter, startWriter } from './writer-process.ts'

const records = (at: string) => join(at, 'records.db')
const keys = (at: string) => join(at, 'keys.json')

/** A closed file of records and all its bytes. */
function closed() {
  const at = folder()
  const first = open(at)
  furnished(first)
  first.close()
  return { at, database: readFileSync(records(at)), keys: readFileSync(keys(at)) }
}

test('a folder that cannot be made or written is named, with the reason', () => {
  const at = folder()
  writeFileSync(join(at, 'file'), 'not a folder')
  const inside = join(at, 'file', 'records')
  expect(faultOf(() => open(inside))).toEqual({
    code: 'records.folder-not-writable',
    detail: { folder: inside, cause: 'ENOTDIR' },
  })
})

test('a disk that takes no keys is told, and begins nothing', () => {
  const at = folder()
  mkdirSync(join(at, 'keys.json.new'))
  expect(faultOf(() => open(at))).toEqual({
    code: 'records.disk-refused',
    detail: { path: records(at), cause: 'EISDIR' },
  })
  rmSync(join(at, 'keys.json.new'), { recursive: true })
  expect(open(at).read.users()).toEqual([])
})

test('a folder that only others may write is named and left as it is', async () => {
  const at = folder()
  const only = join(at, 'only-read')
  mkdirSync(only)
  chmodSync(at, 0o755)
  chmodSync(only, 0o555)
  const nobody = process.getuid?.() === 0 ? 65_534 : undefined
  const said = await runWriter([only, '0', '1'], nobody)
  expect(JSON.parse(said.at(-1) ?? '')).toEqual({
    fault: { code: 'records.folder-not-writable', detail: { folder: only, cause: 'EACCES' } },
  })
})

test.each([
  ['a text', Buffer.from('Grip strength, 34 kgf. '.repeat(20))],
  ['a text as long as pages are', Buffer.concat([Buffer.from('SQLite format 3\0'), Buffer.alloc(8176, 32)])],
] as const)('%s in place of the records is told and never overwritten', (_, bytes) => {
  for (const withKeys of [true, false]) {
    const { at } = closed()
    writeFileSync(records(at), bytes)
    if (!withKeys) rmSync(keys(at))
    expect(faultOf(() => open(at))).toEqual({ code: 'records.not-a-database', detail: { path: records(at) } })
    expect(readFileSync(records(at))).toEqual(bytes)
  }
})

test('a plain database of another program is told and never changed', () => {
  const { at } = closed()
  rmSync(records(at))
  const other = new Sqlite(records(at))
  other.exec('CREATE TABLE songs (title)')
  other.close()
  const bytes = readFileSync(records(at))
  expect(faultOf(() => open(at)).code).toBe('records.not-a-database')
  expect(readFileSync(records(at))).toEqual(bytes)
})

test('missing keys are told, no new ones are made, and with the keys back all is there', async () => {
  const before = closed()
  rmSync(keys(before.at))
  for (const _ of ['once', 'again']) {
    expect(faultOf(() => open(before.at))).toEqual({
      code: 'records.keys-missing',
      detail: { path: records(before.at) },
    })
  }
  expect(readFileSync(records(before.at))).toEqual(before.database)
  writeFileSync(keys(before.at), before.keys)
  expect((await open(before.at).verify(quietly)).problems).toEqual([])
})

test.each([
  ['no JSON', 'not keys'],
  ['JSON of something else', '{"keys":1}'],
  ['a data key that is too short', 'short'],
])('unreadable keys (%s) are told and left as they are', (_, text) => {
  const { at, database, keys: good } = closed()
  const written = text === 'short' ? good.toString().replace(/"data": "[^"]+"/, '"data": "AAAA"') : text
  writeFileSync(keys(at), written)
  expect(faultOf(() => open(at))).toEqual({ code: 'records.keys-unreadable', detail: { path: keys(at) } })
  expect(readFileSync(keys(at), 'utf8')).toBe(written)
  expect(readFileSync(records(at))).toEqual(database)
})

test('the keys of other records are told, and both stay as they are', () => {
  const [mine, other] = [closed(), closed()]
  cpSync(keys(other.at), keys(mine.at))
  expect(faultOf(() => open(mine.at))).toEqual({
    code: 'records.keys-mismatch',
    detail: { path: records(mine.at) },
  })
  expect(readFileSync(records(mine.at))).toEqual(mine.database)
  writeFileSync(keys(mine.at), mine.keys)
  expect(open(mine.at).read.users()).toHaveLength(1)
})

test('records damaged at any page are told as damaged, never read as whole', async () => {
  const { at, database } = closed()
  const said = new Set<string>()
  for (let page = 0; page < database.length / 4096; page += 1) {
    const damaged = Buffer.from(database)
    damaged.fill(0x5a, page * 4096 + 100, page * 4096 + 200)
    writeFileSync(records(at), damaged)
    rmSync(join(at, 'damage-found.json'), { force: true })
    try {
      const opened = open(at)
      const report = await opened.verify(quietly)
      opened.close()
      for (const problem of report.problems) said.add(problem.code)
      expect(report.problems.length).toBeGreaterThan(0)
    } catch (error) {
      if (!(error instanceof Refused)) throw error
      said.add(error.fault.code)
    }
    expect(readFileSync(records(at))).toEqual(damaged)
  }
  expect([...said].toSorted()).toEqual(['file', 'records.damaged', 'records.keys-mismatch'])
})

test('keys are readable by their owner only', () => {
  expect(statSync(keys(closed().at)).mode & 0o777).toBe(0o600)
})

test('a second instance is told who holds the records, since when, and changes nothing', () => {
  const at = folder()
  const first = open(at)
  const fault = faultOf(() => open(at))
  expect(fault).toMatchObject({
    code: 'records.in-use',
    detail: { folder: at, pid: process.pid, since: '2026-03-02T10:00:00.000+01:00' },
  })
  expect(addUser(first, 'Ada')).toBeTruthy()
  first.close()
  expect(open(at).read.users()).toHaveLength(1)
})

test('another process that holds the records is told by its number; once it is dead, nothing is in the way', async () => {
  const at = folder()
  const writer = await startWriter([at, '1', '1000000'])
  expect(faultOf(() => open(at))).toMatchObject({ code: 'records.in-use', detail: { pid: writer.pid } })
  await writer.kill()
  expect(readFileSync(join(at, 'in-use.json'), 'utf8')).toContain(String(writer.pid))
  expect((await open(at).verify(quietly)).problems).toEqual([])
})

test('a note of who holds the records that is left over or spoilt is never in the way', () => {
  const { at } = closed()
  writeFileSync(join(at, 'in-use.json'), 'spoilt')
  const first = open(at)
  writeFileSync(join(at, 'in-use.json'), 'spoilt')
  expect(faultOf(() => open(at))).toEqual({
    code: 'records.in-use',
    detail: { folder: at, pid: 0, host: '', user: '', since: '' },
  })
  first.close()
})
