import { randomBytes } from 'node:crypto'
import { expect, test } from 'vitest'
import type { VerifyReport } from '../../main/records/index.ts'
import { bodyBytes } from '../../main/records/chain.ts'
import { logOf } from '../../main/records/log.ts'
import { folder, furnished, open, quietly, tap, give } from './clinic.ts'
import { raw, tamper } from './raw-file.ts'

/** A clinic whose file is closed, with the ids of its events in order. */
function kept() {
  const at = folder()
  const records = open(at)
  const { user, client, administration } = furnished(records)
  records.close()
  const ids = raw(at, (database) =>
    database.prepare('SELECT id FROM event ORDER BY sequence').pluck().all(),
  ) as string[]
  return { at, ids, user, client, administration, third: ids[2] ?? '' }
}

async function verified(at: string): Promise<VerifyReport> {
  const records = open(at)
  const report = await records.verify(quietly)
  records.close()
  return report
}

const found = async (at: string) =>
  (await verified(at)).problems.map((problem) => [problem.code, problem.event] as const)

test.each([
  ['id', '019c2f6b-6a00-7a3e-8000-00000000abcd'],
  ['user', '019c2f6b-6a00-7a3e-8000-00000000abcd'],
  ['stream', '019c2f6b-6a00-7a3e-8000-00000000abcd'],
  ['kind', 'user-added-'],
  ['version', 2],
  ['at', '2020-01-01T00:00:00.000+00:00'],
  ['hash', Buffer.alloc(32, 1)],
  ['digest', Buffer.alloc(32, 1)],
] as const)('an event whose %s was altered is named', async (column, value) => {
  const { at, third } = kept()
  tamper(at, `UPDATE event SET ${column} = ? WHERE id = ?`, value, third)
  const named = column === 'id' ? '019c2f6b-6a00-7a3e-8000-00000000abcd' : third
  expect((await found(at)).filter(([code]) => code === 'chain')).toContainEqual(['chain', named])
})

test('an event whose body was altered is named, whether or not its digest was made to fit', async () => {
  const { at, ids } = kept()
  const tapped = ids[7] ?? ''
  tamper(at, 'UPDATE event SET body = ? WHERE id = ?', bodyBytes(tap(99)), tapped)
  expect(await found(at)).toContainEqual(['digest', tapped])
  const salted = kept()
  tamper(salted.at, 'UPDATE event SET salt = ? WHERE id = ?', Buffer.alloc(32), salted.third)
  expect(await found(salted.at)).toEqual([['digest', salted.third]])
})

test('a removed event leaves a gap before the next one', async () => {
  const { at, ids } = kept()
  tamper(at, 'DELETE FROM event WHERE sequence = 4')
  expect(await found(at)).toContainEqual(['gap', ids[4]])
})

test('two events that changed places are named', async () => {
  const { at, ids } = kept()
  tamper(at, 'UPDATE event SET sequence = -sequence WHERE sequence IN (7, 8)')
  raw(at, (database) =>
    database.exec('UPDATE event SET sequence = CASE sequence WHEN -7 THEN 8 ELSE 7 END WHERE sequence < 0'),
  )
  const problems = await found(at)
  expect(problems).toContainEqual(['chain', ids[7]])
  expect(problems).toContainEqual(['chain', ids[6]])
})

test('a stored score that differs from scoring again is told with the administration it is of', async () => {
  const { at, ids, administration } = kept()
  raw(at, (database) => database.exec('UPDATE score SET value = value + 1'))
  expect((await verified(at)).problems).toEqual([
    {
      code: 'scores',
      // The last of all is the seal.
      event: ids.at(-2),
      detail: { table: 'score', administration, score: 'total', place: '{"hand":"right"}' },
    },
  ])
})

test('a body and its salt may be erased: the chain still verifies and the rest stays', async () => {
  const { at, client, administration } = kept()
  raw(at, (database) =>
    database
      .prepare('UPDATE event SET body = NULL, salt = NULL WHERE stream_kind = ? AND stream = ?')
      .run('client', client),
  )
  const records = open(at)
  records.rebuild()
  const report = await records.verify(quietly)
  expect(report).toMatchObject({ erased: 1, problems: [] })
  expect(records.read.client(client)).toBeNull()
  expect(records.stream({ kind: 'client', id: client })).toMatchObject([{ kind: 'client-added', body: null }])
  expect(records.read.administration(administration)).toMatchObject({ phase: 'finished', clientName: '' })
})

test('half an erasure is a problem', async () => {
  const { at, third } = kept()
  tamper(at, 'UPDATE event SET salt = NULL WHERE id = ?', third)
  expect(await found(at)).toContainEqual(['half-erased', third])
})

test('the file itself refuses to delete or change an event, or to erase half of one', () => {
  const { at } = kept()
  raw(at, (database) => {
    for (const sql of [
      'DELETE FROM event WHERE sequence = 3',
      "UPDATE event SET user = 'x' WHERE sequence = 3",
      "UPDATE event SET kind = 'x', body = NULL, salt = NULL WHERE sequence = 3",
      'UPDATE event SET salt = NULL WHERE sequence = 3',
      "UPDATE event SET body = x'00', salt = NULL WHERE sequence = 3",
    ]) {
      expect(() => database.exec(sql)).toThrow(/never/)
    }
  })
})

test('an event of a newer program is kept, told as unknown and read by no one', async () => {
  const { at, user } = kept()
  const records = open(at)
  const { device } = records
  const [id, stream] = [records.newId(), { kind: 'clinic', id: user } as const]
  records.close()
  raw(at, (database) =>
    logOf(database, device, randomBytes).write(
      { id, at: '2030-01-01T00:00:00.000+00:00', user, stream, version: 7, body: { kind: 'user-added' } },
      Date.UTC(2030, 0, 1),
    ),
  )
  expect(await found(at)).toEqual([['unknown', id]])
  const again = open(at)
  again.rebuild()
  expect(again.read.users()).toEqual([{ id: user, name: 'Ada' }])
  expect(again.stream(stream)).toMatchObject([{ id, version: 7 }])
})

test('verifying tells how far it is, can be stopped, and lets a test go on meanwhile', async () => {
  const records = open(folder())
  const { user, administration } = furnished(records)
  for (let batch = 0; batch < 3; batch += 1) {
    give(
      records,
      administration,
      Array.from({ length: 400 }, (_, index) => tap(index)),
      user,
    )
  }
  const told: number[] = []
  const running = records.verify({
    progress: (done) => {
      if (told.length === 0) give(records, administration, [tap(1)], user)
      told.push(done)
    },
    signal: new AbortController().signal,
  })
  const report = await running
  expect(report.problems).toEqual([])
  expect(report.events).toBeGreaterThanOrEqual(1211)
  expect(told.length).toBeGreaterThan(3)
  expect(told.toSorted((a, b) => a - b)).toEqual(told)
  expect(told.at(-1)).toBe(1)
  const stop = new AbortController()
  await expect(
    records.verify({ progress: () => stop.abort(new Error('stopped')), signal: stop.signal }),
  ).rejects.toThrow('stopped')
})
