import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { backupsIn, restore } from '../../main/records/index.ts'
import type { Fault } from '../../main/contract/procedure.ts'
import { Refused } from '../../main/contract/procedure.ts'
import { READ_MODELS } from '../../main/records/read-models.ts'
import { staying } from '../../main/records/rotation.ts'
import { addUser, counting, folder, furnished, handClock, open, quietly } from './clinic.ts'
import { raw } from './raw-file.ts'

const DAY = 86_400_000
const as = { store: 'clinic', projector: counting, clock: handClock() } as const

async function refusal(act: Promise<unknown>): Promise<Fault> {
  try {
    await act
  } catch (error) {
    if (error instanceof Refused) return error.fault
    throw error
  }
  throw new Error('It was not refused.')
}

const tablesOf = (at: string) =>
  raw(at, (database) => {
    // Which devices write here is the only thing that a restart on another machine adds to.
    const names = ['event', ...READ_MODELS].filter((name) => name !== 'device')
    return Object.fromEntries(
      names.map((name) => [name, database.prepare(`SELECT * FROM ${name} ORDER BY 1`).all()]),
    )
  })

describe('STD-SEC-16: a backup', () => {
  test('restores to an equal record, on another machine too, and goes on as a device of its own', async () => {
    const at = folder()
    const records = open(at)
    furnished(records)
    const made = await records.backUp(join(folder(), 'on-a-stick'))
    records.close()
    const elsewhere = join(folder(), 'new')
    const restored = await restore(made.folder, { ...as, folder: elsewhere, replaces: false })
    expect(restored).toMatchObject({ events: made.events, setAside: null })
    expect(tablesOf(elsewhere)).toEqual(tablesOf(at))
    const again = open(elsewhere)
    expect((await again.verify(quietly)).problems).toEqual([])
    expect(again.device).not.toBe(records.device)
  })

  test('and the records themselves hold no plain text', async () => {
    const at = folder()
    const records = open(at)
    furnished(records)
    const made = await records.backUp(join(at, 'backups'))
    const texts = ['Ångström', 'K-104', 'ring_board', 'assigned', 'CREATE TABLE']
    const folders = [at, made.folder]
    const files = folders.flatMap((of) =>
      readdirSync(of, { withFileTypes: true })
        .filter((one) => one.isFile())
        .map((one) => join(of, one.name)),
    )
    expect(files.map((file) => file.split('/').at(-1))).toEqual(
      expect.arrayContaining(['records.db', 'records.db-wal', 'backup.json']),
    )
    for (const file of files) {
      const bytes = readFileSync(file)
      for (const text of texts) {
        expect([file, text, bytes.includes(text), bytes.includes(Buffer.from(text, 'utf16le'))]).toEqual([
          file,
          text,
          false,
          false,
        ])
      }
    }
  })

  test('can’t be read without its keys', async () => {
    const records = open(folder())
    furnished(records)
    const made = await records.backUp(folder())
    rmSync(join(made.folder, 'keys.json'))
    const fault = await refusal(restore(made.folder, { ...as, folder: folder(), replaces: false }))
    expect(fault.code).toBe('records.keys-missing')
  })
})

async function backedUp() {
  const at = folder()
  const records = open(at)
  furnished(records)
  const made = await records.backUp(join(at, 'backups'))
  addUser(records, 'Ben')
  records.close()
  return { at, made }
}

describe('restoring', () => {
  test('is refused over records that have gone on, unless it is asked for; then they are set aside', async () => {
    const { at, made } = await backedUp()
    const before = tablesOf(at)
    expect(await refusal(restore(made.folder, { ...as, folder: at, replaces: false }))).toMatchObject({
      code: 'records.newer-there',
      detail: { events: 1 },
    })
    expect(tablesOf(at)).toEqual(before)
    const restored = await restore(made.folder, { ...as, folder: at, replaces: true })
    expect(
      open(at)
        .read.users()
        .map(({ name }) => name),
    ).toEqual(['Ada'])
    expect(tablesOf(restored.setAside ?? '')).toEqual(before)
  })

  test('of a damaged backup is refused and changes nothing', async () => {
    const { at, made } = await backedUp()
    const before = tablesOf(at)
    const path = join(made.folder, 'records.db')
    const bytes = readFileSync(path)
    bytes.fill(0x5a, bytes.length - 2000, bytes.length - 1900)
    writeFileSync(path, bytes)
    const fault = await refusal(restore(made.folder, { ...as, folder: at, replaces: true }))
    expect(['records.backup-unsound', 'records.damaged']).toContain(fault.code)
    expect(tablesOf(at)).toEqual(before)
    expect(
      readdirSync(at).filter((name) => name.startsWith('set-aside') || name.includes('unfinished')),
    ).toEqual([])
  })

  test('what is no backup, or over records that are open, is refused', async () => {
    const { at, made } = await backedUp()
    expect((await refusal(restore(at, { ...as, folder: folder(), replaces: true }))).code).toBe(
      'records.no-backup',
    )
    const records = open(at)
    const fault = await refusal(restore(made.folder, { ...as, folder: at, replaces: true }))
    expect(fault.code).toBe('records.busy')
    expect(records.read.users()).toHaveLength(2)
  })

  test('over a damaged file needs no comparison but the word, and sets it aside', async () => {
    const { at, made } = await backedUp()
    writeFileSync(join(at, 'records.db'), 'spoilt')
    expect(
      (await refusal(restore(made.folder, { ...as, folder: at, replaces: false }))).detail,
    ).toMatchObject({
      events: -1,
    })
    const { setAside } = await restore(made.folder, { ...as, folder: at, replaces: true })
    expect(readFileSync(join(setAside ?? '', 'records.db'), 'utf8')).toBe('spoilt')
    expect((await open(at).verify(quietly)).problems).toEqual([])
  })
})

describe('backups', () => {
  test('each is opened and verified; one of unsound records is not kept, and those before it stay', async () => {
    const at = folder()
    const into = join(at, 'backups')
    const first = open(at)
    furnished(first)
    await first.backUp(into)
    first.close()
    raw(at, (database) => database.exec('UPDATE score SET value = value + 1'))
    const records = open(at)
    expect((await refusal(records.backUp(into))).code).toBe('records.backup-unsound')
    expect(backupsIn(into)).toHaveLength(1)
    expect(readdirSync(into)).toHaveLength(1)
  })

  test('made day by day are let go of by the rotation, and what else lies there is left alone', async () => {
    const at = folder()
    const into = join(at, 'backups')
    const clock = handClock()
    const records = open(at, { clock })
    furnished(records)
    mkdirSync(into)
    writeFileSync(join(into, 'notes.txt'), 'mine')
    mkdirSync(join(into, 'backup-of-mine'))
    for (let day = 0; day < 10; day += 1) {
      await records.backUp(into)
      clock.move(DAY)
    }
    const moments = backupsIn(into).map((one) => one.at.slice(0, 10))
    expect(moments).toEqual([...staying(moments)].toSorted().toReversed())
    expect(moments.slice(0, 7)).toEqual(
      [11, 10, 9, 8, 7, 6, 5].map((day) => `2026-03-${String(day).padStart(2, '0')}`),
    )
    expect(existsSync(join(into, 'notes.txt'))).toBe(true)
    expect(existsSync(join(into, 'backup-of-mine'))).toBe(true)
  })

  test('that can’t be written are refused by the disk’s own reason', async () => {
    const at = folder()
    const records = open(at)
    writeFileSync(join(at, 'file'), '')
    expect(await refusal(records.backUp(join(at, 'file', 'in')))).toMatchObject({
      code: 'records.disk-refused',
    })
  })
})

describe('the rotation', () => {
  const moment = fc
    .integer({ min: 0, max: 900 * 24 })
    .map((hours) => `${new Date(Date.UTC(2024, 0, 1) + hours * 3_600_000).toISOString().slice(0, 19)}+01:00`)
  const moments = fc.uniqueArray(moment, { minLength: 1, maxLength: 200 })

  test('keeps the newest, at most 7 + 4 + 12, and the newest of every day, week and month that it keeps', () => {
    fc.assert(
      fc.property(moments, (all) => {
        const stay = staying(all)
        expect(stay.has(all.toSorted().at(-1) ?? '')).toBe(true)
        expect(stay.size).toBeLessThanOrEqual(7 + 4 + 12)
        const days = [...new Set(all.map((at) => at.slice(0, 10)))].toSorted().slice(-7)
        for (const day of days)
          expect(
            stay.has(
              all
                .filter((at) => at.startsWith(day))
                .toSorted()
                .at(-1) ?? '',
            ),
          ).toBe(true)
        const months = [...new Set(all.map((at) => at.slice(0, 7)))].toSorted().slice(-12)
        for (const month of months)
          expect(
            stay.has(
              all
                .filter((at) => at.startsWith(month))
                .toSorted()
                .at(-1) ?? '',
            ),
          ).toBe(true)
      }),
    )
  })

  test('lets go of nothing more when it is asked again', () => {
    fc.assert(
      fc.property(moments, (all) => {
        const once = staying(all)
        expect(staying([...once])).toEqual(once)
      }),
    )
  })
})
