import { existsSync, mkdirSync, readdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { salvage } from '../../main/records/index.ts'
import { bodyBytes } from '../../main/records/chain.ts'
import { counting, handClock, open, quietly, tap } from '../records/clinic.ts'
import { faultOf } from '../records/fault.ts'
import { tamper } from '../records/raw-file.ts'
import { copied, flipped, found, kept, PAGE, rowsOf } from './damage.ts'
import { drawn } from './drawn.ts'

const whole = { store: 'clinic', projector: counting, clock: handClock() } as const

test('what can be read is carried over byte by byte, what can’t is told, and the damaged file stays as it was', async () => {
  const { at, database } = kept(40)
  const before = rowsOf(at)
  const random = drawn(7)
  for (let round = 0; round < 5; round += 1) {
    const copy = copied(at)
    // Not the first page: without it nobody can tell a damaged file from one of other keys.
    const page = 1 + Math.floor(random() * (database.length / PAGE - 1))
    const damaged = Buffer.from(database)
    damaged.fill(0x5a, page * PAGE + 200, page * PAGE + 300)
    writeFileSync(join(copy, 'records.db'), damaged)
    const report = salvage({ ...whole, folder: copy })
    expect(readFileSync(join(report.setAside, 'records.db'))).toEqual(damaged)
    const known = new Map(before.map((row) => [row['id'], row]))
    const after = rowsOf(copy).filter(({ id }) => known.has(id))
    expect(after).toEqual(after.map(({ id }) => known.get(id)))
    expect(after).toHaveLength(report.kept)
    expect(report.kept + report.lost).toBe(before.length)
    const records = open(copy)
    const { problems, lost } = await records.verify(quietly)
    expect(problems).toEqual([])
    expect(lost).toBeLessThanOrEqual(report.lost)
    expect(records.read.users().length).toBeGreaterThan(0)
    records.close()
    expect(open(copy).device).not.toBe(before[0]?.['device'])
  }
})

test('what an event says is left out where it was altered, and its administration is named', async () => {
  const { at, administration } = kept(2)
  tamper(
    at,
    "UPDATE event SET body = ? WHERE stream = ? AND kind = 'tapped.tap'",
    bodyBytes(tap(99)),
    administration,
  )
  const report = salvage({ ...whole, folder: at })
  expect(report).toMatchObject({ lost: 0, altered: 2, of: [{ kind: 'administration', id: administration }] })
  expect(report.of[0]?.title).toContain('Łukasz Ångström')
  expect((await open(at).verify(quietly)).problems).toEqual([])
})

test('an end that is missing is written down as lost', async () => {
  const { at } = kept(2)
  const events = rowsOf(at).length
  tamper(at, 'DELETE FROM event WHERE sequence > ?', events - 3)
  expect(faultOf(() => open(at)).code).toBe('records.damaged')
  expect(salvage({ ...whole, folder: at })).toMatchObject({ kept: events - 3, lost: 3, altered: 0 })
  expect((await open(at).verify(quietly)).problems).toEqual([])
})

test('damage that a full check has found is met at the next start, and gone once it was salvaged', async () => {
  const { at } = kept(2)
  tamper(at, 'DELETE FROM event WHERE sequence = 9')
  const records = open(at)
  expect((await records.verify(quietly)).problems).not.toEqual([])
  records.close()
  expect(faultOf(() => open(at)).detail).toMatchObject({ cause: 'found-before' })
  salvage({ ...whole, folder: at })
  expect((await open(at).verify(quietly)).problems).toEqual([])
})

test('a salvage that was cut short, wherever, is begun again and loses nothing', async () => {
  const { at } = kept(3)
  const before = rowsOf(at).length
  // What one that was killed leaves: the mark, a copy set aside, a half-made file.
  writeFileSync(join(at, 'damage-found.json'), '{}')
  mkdirSync(join(at, 'set-aside-2026-03-02T10-00-00'))
  writeFileSync(join(at, 'records.salvaged.db'), 'half')
  const report = salvage({ ...whole, folder: at })
  expect(report).toMatchObject({ kept: before, lost: 0, altered: 0, of: [] })
  expect(readdirSync(at).filter((name) => name.startsWith('records.'))).toEqual(['records.db'])
  expect((await open(at).verify(quietly)).problems).toEqual([])
})

test('a file that can’t be read at all is refused and stays where it was', () => {
  const { at, database } = kept(2)
  const broken = Buffer.from(database).fill(0x5a, 100, 200)
  writeFileSync(join(at, 'records.db'), broken)
  expect(faultOf(() => salvage({ ...whole, folder: at })).code).toBe('records.keys-mismatch')
  expect(readFileSync(join(at, 'records.db'))).toEqual(broken)
  expect(existsSync(join(at, 'keys.json'))).toBe(true)
})

test('a bit that flipped anywhere in the file is found, or no row is another for it', async () => {
  const { found: told } = await flipped(20)
  expect(told).toBeGreaterThan(10)
})

test('a file that was cut off is told at any length, and what is left of it is salvaged', async () => {
  const { at, database } = kept(20)
  for (const pages of [1, 2, Math.floor(database.length / PAGE / 2), database.length / PAGE - 1]) {
    const copy = copied(at)
    truncateSync(join(copy, 'records.db'), pages * PAGE)
    expect(await found(copy)).not.toEqual([])
    truncateSync(join(copy, 'records.db'), pages * PAGE - 100)
    expect(faultOf(() => open(copy)).code).toMatch(/^records\.(not-a-database|damaged)$/)
  }
})
