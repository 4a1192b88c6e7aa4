import { copyFileSync, existsSync, readFileSync, renameSync, rmSync, truncateSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { type Fault, Refused } from '../../main/contract/procedure.ts'
import type { Records } from '../../main/records/index.ts'
import { addUser, begin, folder, furnished, give, handClock, open, quietly, tap } from '../records/clinic.ts'
import { faultOf } from '../records/fault.ts'
import { drawn } from './drawn.ts'

const DAY = 86_400_000
const files = ['records.db', 'records.db-wal', 'keys.json', 'sealed.json']

/** What a power cut would leave now: the files as they are on disk, in a folder of their own. */
function imageOf(at: string): string {
  const image = folder()
  for (const name of files) if (existsSync(join(at, name))) copyFileSync(join(at, name), join(image, name))
  return image
}

const idsOf = (records: Records, id: string) => records.administration(id).map((event) => event.id)

test('a write-ahead log that was torn gives the events before the tear, whole and in order, or is told as damaged', async () => {
  const at = folder()
  const records = open(at)
  const { user } = furnished(records)
  const id = begin(records, user, null)
  for (let count = 0; count < 30; count += 1) give(records, id, [tap(count), tap(count)], user)
  const written = idsOf(records, id)
  const length = readFileSync(join(at, 'records.db-wal')).length
  const random = drawn(3)
  const told: Fault[] = []
  for (let round = 0; round < 12; round += 1) {
    const image = imageOf(at)
    truncateSync(join(image, 'records.db-wal'), Math.floor((0.3 + 0.7 * random()) * length))
    try {
      const again = open(image)
      const kept = idsOf(again, id)
      expect(kept).toEqual(written.slice(0, kept.length))
      // Two to a batch: none is there by half.
      expect(kept.length % 2).toBe(0)
      expect((await again.verify(quietly)).problems).toEqual([])
      again.close()
    } catch (error) {
      if (!(error instanceof Refused)) throw error
      told.push(error.fault)
    }
  }
  expect(told.length).toBeLessThan(12)
  // Where it isn't opened, the tear took what had been sealed.
  for (const { code, detail } of told) expect([code, detail['cause']]).toEqual(['records.damaged', 'tail'])
})

test.each([
  ['back a day', -DAY],
  ['forward a year', 365 * DAY],
])('a wall clock that is set %s in mid-test changes no order and hides no event', async (_, ms) => {
  const clock = handClock()
  const at = folder()
  const records = open(at, { clock })
  const user = addUser(records, 'Ada')
  const id = begin(records, user, null)
  give(records, id, [tap(1)], user)
  const last = records.administration(id).at(-1)
  clock.move(ms)
  give(records, id, [tap(2)], user)
  clock.move(-ms)
  give(records, id, [tap(3), { kind: 'finished' }], user)
  const kinds = records.administration(id).map(({ body }) => ('count' in body ? body.count : body.kind))
  expect(kinds).toEqual(['opened', 'assigned', 1, 2, 3, 'finished'])
  // The record says what the wall clock showed, and nothing is put right in silence.
  const shown = Date.parse(records.administration(id)[3]?.at ?? '') - Date.parse(last?.at ?? '')
  expect(shown).toBe(ms)
  expect((await records.verify(quietly)).problems).toEqual([])
  records.close()
  expect(idsOf(open(at, { clock }), id)).toHaveLength(6)
})

test.each([
  ['removed', (at: string) => rmSync(at, { recursive: true })],
  ['moved away', (at: string) => renameSync(at, `${at}-elsewhere`)],
])(
  'a folder that was %s in mid-test is the disk’s refusal: nothing is acknowledged that is nowhere',
  (_, takeAway) => {
    const at = join(folder(), 'records')
    const records = open(at)
    const user = addUser(records, 'Ada')
    const id = begin(records, user, null)
    const before = idsOf(records, id)
    takeAway(at)
    const stamped = records.stamp({ kind: 'administration', id }, [tap(1)], user)
    expect(faultOf(() => records.keep(stamped))).toMatchObject({
      code: 'records.disk-refused',
      detail: { cause: 'ENOENT' },
    })
    if (!existsSync(`${at}-elsewhere`)) return
    renameSync(`${at}-elsewhere`, at)
    records.keep(stamped)
    expect(idsOf(records, id)).toEqual([...before, stamped[0]?.id])
  },
)
