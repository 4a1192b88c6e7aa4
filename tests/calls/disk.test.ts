import { beforeEach, describe, expect, test, vi } from 'vitest'
import { Live } from '../../main/calls/live.ts'
import { Refused } from '../../main/contract/procedure.ts'
import type { Push } from '../../main/contract/pushes.ts'
import type { Records } from '../../main/records/index.ts'
import { NOTHING_KNOWN } from '../../protocols/client.ts'
import type { EventBody } from '../../protocols/runner/events.ts'
import { addClient, begin, type Desk, openDesk, PEGS } from './desk.ts'

let desk: Desk
let live: Live
let refuses: Refused | null = null
let pushed: Push[] = []

/** The desk's records with a disk that can be made to refuse. */
function withDisk(records: Records): Records {
  return {
    ...records,
    keep(stamped) {
      if (refuses) throw refuses
      return records.keep(stamped)
    },
  }
}

const kinds = (id: string) => desk.clinic.stores.records.administration(id).map(({ body }) => body.kind)
const remark = (text: string): EventBody => ({ kind: 'remarked', text })
const full = () => new Refused('records.disk-refused', { path: 'records.db', cause: 'SQLITE_FULL' })

beforeEach(async () => {
  desk = await openDesk()
  refuses = null
  pushed = []
  const { records, rehearsal } = desk.clinic.stores
  live = new Live({
    stores: { records: withDisk(records), rehearsal },
    push: (one) => pushed.push(one),
    random: () => 0.5,
  })
  vi.useFakeTimers()
  return () => {
    vi.useRealTimers()
    refuses = null
    desk.clinic.close()
  }
})

async function inHand(): Promise<string> {
  const { id } = await begin(desk, PEGS, await addClient(desk, 'Ada Marsh'))
  live.open('records', id, desk.user)
  live.act('records', id, { kind: 'confirmed', what: 'resume' }, desk.user)
  return id
}

describe('when the disk refuses in the middle of a test', () => {
  test('what happens goes on in memory, is said to be unsaved, and is kept in its order once the disk takes it', async () => {
    const id = await inHand()
    const before = kinds(id)
    refuses = full()
    const first = live.act('records', id, remark('one'), desk.user)
    const second = live.act('records', id, remark('two'), desk.user)
    expect([first.taken, first.saved, second.taken, second.saved]).toEqual([true, false, true, false])
    expect(second.view.remarks.map(({ text }) => text)).toEqual(['one', 'two'])
    expect(kinds(id)).toEqual(before)
    expect(pushed.at(-1)).toMatchObject({ push: 'administration', id, saved: false })
    await vi.advanceTimersByTimeAsync(5000)
    expect(live.isSaved('records', id)).toBe(false)
    refuses = null
    await vi.advanceTimersByTimeAsync(1500)
    expect(live.isSaved('records', id)).toBe(true)
    expect(pushed.at(-1)).toMatchObject({ push: 'administration', id, saved: true })
    const kept = desk.clinic.stores.records.administration(id).map(({ body }) => body)
    expect(kept.slice(before.length)).toEqual([remark('one'), remark('two')])
  })

  test('the next act writes all that waits, without waiting for the clock', async () => {
    const id = await inHand()
    refuses = full()
    live.act('records', id, remark('one'), desk.user)
    refuses = null
    expect(live.act('records', id, remark('two'), desk.user)).toMatchObject({ taken: true, saved: true })
    expect(kinds(id).slice(-2)).toEqual(['remarked', 'remarked'])
  })

  test('nothing is finished, noted or moved before it is saved', async () => {
    const id = await inHand()
    refuses = full()
    live.act('records', id, remark('one'), desk.user)
    expect(() => live.act('records', id, { kind: 'finished' }, desk.user)).toThrow('not_saved')
    expect(() => live.act('records', id, { kind: 'withdrawn', reason: 'x' }, desk.user)).toThrow('not_saved')
    expect(() => live.act('records', id, { kind: 'noted', text: '' }, desk.user)).toThrow('not_saved')
    const { facts } = live.open('records', id, desk.user).view
    const to = { client: null, facts: facts ?? NOTHING_KNOWN, reason: 'x' }
    expect(() => live.assign(id, to, desk.user)).toThrow('not_saved')
  })

  test('an end that the disk refuses has not happened', async () => {
    const id = await inHand()
    const before = live.open('records', id, desk.user)
    refuses = full()
    const withdrawn: EventBody = { kind: 'withdrawn', reason: 'x' }
    expect(() => live.act('records', id, withdrawn, desk.user)).toThrow('records.disk-refused')
    expect(live.open('records', id, desk.user)).toEqual(before)
    refuses = null
    expect(live.act('records', id, withdrawn, desk.user)).toMatchObject({ taken: true, saved: true })
  })

  test('a test that can’t even be begun on disk is not begun', async () => {
    const id = await inHand()
    const { kept } = live.read('records', id)
    const opening = desk.clinic.stores.records.administration(id).slice(0, 2)
    refuses = full()
    expect(() =>
      live.begin(
        'records',
        kept,
        opening.map(({ body }) => body),
        desk.user,
      ),
    ).toThrow('records.disk-refused')
    refuses = null
    await vi.advanceTimersByTimeAsync(5000)
    expect(desk.clinic.stores.records.read.waitingFor(desk.user)).toHaveLength(1)
  })

  test('closing writes what waits', async () => {
    const id = await inHand()
    refuses = full()
    live.act('records', id, remark('one'), desk.user)
    refuses = null
    live.close()
    expect(kinds(id).at(-1)).toBe('remarked')
  })

  test('a fault that is not the disk’s is no reason to go on in memory', async () => {
    const id = await inHand()
    refuses = new Refused('records.damaged', { path: 'records.db', cause: 'x' })
    expect(() => live.act('records', id, remark('one'), desk.user)).toThrow('records.damaged')
    refuses = null
    expect(live.open('records', id, desk.user).view.remarks).toEqual([])
  })
})
