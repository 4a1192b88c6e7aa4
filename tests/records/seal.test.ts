import { copyFileSync, existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { EventBody } from '../../protocols/runner/events.ts'
import { readSealCode } from '../../main/records/index.ts'
import { sealCode } from '../../main/records/seal.ts'
import { begin, folder, furnished, give, open, quietly, tap } from './clinic.ts'
import { faultOf } from './fault.ts'
import { raw, tamper } from './raw-file.ts'

/** A closed file with one test given and sealed. */
function sealed() {
  const at = folder()
  const records = open(at)
  const given = furnished(records)
  const seal = records.read.sealOf(given.administration)
  records.close()
  return { at, seal, ...given }
}

/** What verifying says of a file that may look damaged. */
async function problems(at: string) {
  const records = open(at, { examines: true })
  const report = await records.verify(quietly)
  records.close()
  return report.problems.map(({ code, event }) => [code, event] as const)
}

const NOTED: EventBody = { kind: 'noted', text: 'Noted.' }

const eventsOf = (at: string) =>
  raw(at, (database) => database.prepare('SELECT id, kind, sequence FROM event ORDER BY sequence').all()) as {
    id: string
    kind: string
    sequence: number
  }[]

const ALTERED: Readonly<Record<string, string>> = {
  id: "'019c2f6b-6a00-7a3e-8000-00000000abcd'",
  clock: "'ffffffffffff0000'",
  user: "'x'",
  stream: "'x'",
  kind: "'x'",
  version: 'version + 1',
  at: "'2020-01-01T00:00:00.000+00:00'",
  salt: "x'01'",
  body: "CAST(body || ' ' AS BLOB)",
  digest: "x'01'",
  hash: "x'01'",
}

describe('STD-SEC-5: one event that was changed, left out, moved or put in is found and named', () => {
  const columns = Object.keys(ALTERED)

  test.each(columns)('its %s changed', async (column) => {
    const { at } = sealed()
    for (const { sequence, id } of eventsOf(at)) {
      const copy = folder()
      for (const name of ['records.db', 'keys.json', 'sealed.json'])
        copyFileSync(join(at, name), join(copy, name))
      tamper(copy, `UPDATE event SET ${column} = ${ALTERED[column]} WHERE sequence = ?`, sequence)
      const named = column === 'id' ? '019c2f6b-6a00-7a3e-8000-00000000abcd' : id
      expect((await problems(copy)).map(([, event]) => event)).toContain(named)
    }
  })

  test('any one left out, also the last', async () => {
    const { at } = sealed()
    const events = eventsOf(at)
    for (const { sequence } of events) {
      const copy = folder()
      for (const name of ['records.db', 'keys.json', 'sealed.json'])
        copyFileSync(join(at, name), join(copy, name))
      tamper(copy, 'DELETE FROM event WHERE sequence = ?', sequence)
      const next = events[sequence]
      expect(await problems(copy)).toContainEqual(next ? ['gap', next.id] : ['tail', null])
    }
  })

  test('two neighbours that changed places', async () => {
    const { at } = sealed()
    const [, , , fourth, fifth] = eventsOf(at)
    tamper(at, 'UPDATE event SET sequence = -sequence WHERE sequence IN (?, ?)', 4, 5)
    raw(at, (database) =>
      database.exec('UPDATE event SET sequence = CASE sequence WHEN -4 THEN 5 ELSE 4 END WHERE sequence < 0'),
    )
    const found = await problems(at)
    expect(found).toContainEqual(['chain', fifth?.id])
    expect(found).toContainEqual(['chain', fourth?.id])
  })

  test('one put in at the end, by somebody who has the file’s key', async () => {
    const { at } = sealed()
    tamper(
      at,
      `INSERT INTO event SELECT 'put-in', device, sequence + 1, 'ffffffffffff0000', user, stream_kind, stream, kind,
         version, at, salt, body, digest, hash FROM event ORDER BY sequence DESC LIMIT 1`,
    )
    expect(await problems(at)).toContainEqual(['chain', 'put-in'])
  })
})

describe('a seal', () => {
  test('is set when an administration ends and again after each later entry, and shows as a code', async () => {
    const records = open(folder())
    const { user, administration } = furnished(records)
    const first = records.read.sealOf(administration)
    expect(first).toMatchObject({ administration, at: '2026-03-02T10:00:00.000+01:00' })
    expect(first?.code).toMatch(/^([0-9A-HJKMNP-TV-Z]{4}-){3}[0-9A-HJKMNP-TV-Z]{4}$/)
    const other = begin(records, user, null)
    give(records, other, [tap(1)], user)
    expect(records.read.sealOf(other)).toBeNull()
    give(records, administration, [NOTED], user)
    const second = records.read.sealOf(administration)
    expect(second?.code).not.toBe(first?.code)
    expect(records.read.sealBy(first?.code ?? '')).toEqual(first)
    expect((await records.verify(quietly)).problems).toEqual([])
  })

  test('is written with the end of the administration or not at all, and not twice for what is kept twice', () => {
    const records = open(folder())
    const { user, administration } = furnished(records)
    const stamped = records.stamp({ kind: 'administration', id: administration }, [NOTED], user)
    records.keep(stamped)
    const seals = () => records.stream({ kind: 'clinic', id: '00000000-0000-0000-0000-000000000000' })
    const before = seals().length
    records.keep(stamped)
    expect(seals()).toHaveLength(before)
  })

  test('of another device’s key is found, although chain and digest were made to fit', async () => {
    const mine = sealed()
    const other = sealed()
    // The file is the same; the keys say that another key was this device's.
    const keys = JSON.parse(readFileSync(join(mine.at, 'keys.json'), 'utf8'))
    const theirs = JSON.parse(readFileSync(join(other.at, 'keys.json'), 'utf8'))
    keys.secrets.device = theirs.secrets.device
    writeFileSync(join(mine.at, 'keys.json'), JSON.stringify(keys))
    const last = eventsOf(mine.at).findLast(({ kind }) => kind === 'administration-sealed')
    expect(await problems(mine.at)).toEqual([
      ['seal', last?.id],
      ['witness', null],
    ])
  })
})

describe('the end of the records', () => {
  test('cut off after a seal is found at the start and by verifying, and tells how far it had come', async () => {
    const { at } = sealed()
    tamper(at, 'DELETE FROM event WHERE sequence > 8')
    expect(faultOf(() => open(at))).toEqual({
      code: 'records.damaged',
      detail: { path: join(at, 'records.db'), cause: 'tail' },
    })
    const records = open(at, { examines: true })
    const { problems: found } = await records.verify(quietly)
    expect(found.find(({ code }) => code === 'tail')?.detail).toMatchObject({ sequence: 11, found: 8 })
  })

  test('of an older copy that was put in the place of the records is found', async () => {
    const at = folder()
    const records = open(at)
    const { user } = furnished(records)
    records.close()
    const older = readFileSync(join(at, 'records.db'))
    const again = open(at)
    begin(again, user, null)
    again.close()
    writeFileSync(join(at, 'records.db'), older)
    expect(faultOf(() => open(at)).detail).toMatchObject({ cause: 'tail' })
    expect(await problems(at)).toEqual([['tail', null]])
  })

  test('noted beside the records by nobody’s key is a problem, and without a note the rest still verifies', async () => {
    const { at } = sealed()
    const path = join(at, 'sealed.json')
    const note = JSON.parse(readFileSync(path, 'utf8'))
    writeFileSync(path, JSON.stringify({ ...note, sequence: 3 }))
    expect(await problems(at)).toEqual([['witness', null]])
    rmSync(path)
    expect(await problems(at)).toEqual([])
    open(at).close()
    expect(existsSync(path)).toBe(true)
  })
})

describe('the code of a seal', () => {
  const head = fc
    .uint8Array({ minLength: 32, maxLength: 32 })
    .map((bytes) => Buffer.from(bytes).toString('hex'))

  test('is read as it is typed: small, with other dashes or none, and O, I and L for digits', () => {
    fc.assert(
      fc.property(head, (of) => {
        const code = sealCode(of)
        const typed = code
          .toLowerCase()
          .replaceAll('0', 'o')
          .replaceAll('1', 'l')
          .replace('-', ' – ')
          .replace('-', '')
        expect(readSealCode(typed)).toBe(code)
      }),
    )
  })

  test('tells any two heads apart by their first eighty bits', () => {
    fc.assert(
      fc.property(head, head, (one, other) => {
        expect(sealCode(one) === sealCode(other)).toBe(one.slice(0, 20) === other.slice(0, 20))
      }),
    )
  })

  test.each(['', '7K2M', '7K2M-04QX-9TZB-HC3U', '7K2M-04QX-9TZB-HC311'])('“%s” is none', (typed) => {
    expect(readSealCode(typed)).toBeNull()
  })
})
