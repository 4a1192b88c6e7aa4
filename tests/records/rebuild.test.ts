import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { READ_MODELS } from '../../main/records/read-models.ts'
import {
  CLINIC,
  clientChanged,
  kitRegistered,
  normVerified,
  type Projector,
  type Records,
  settingsChanged,
  visitClosed,
  visitOpened,
} from '../../main/records/index.ts'
import {
  addClient,
  addUser,
  assignedTo,
  begin,
  counting,
  folder,
  furnished,
  give,
  open,
  profileOf,
  quietly,
  tap,
} from './clinic.ts'
import { raw } from './raw-file.ts'

const tablesIn = (at: string) =>
  raw(at, (database) =>
    Object.fromEntries(
      [...READ_MODELS, 'client_search'].map((table) => [
        table,
        database
          .prepare(`SELECT * FROM ${table}`)
          .all()
          .map((row) => JSON.stringify(row))
          .sort(),
      ]),
    ),
  )

const pick = (from: readonly string[], by: number) => from[by % from.length] ?? ''

/** A little of everything a clinic can do, chosen by numbers. */
function live(records: Records, choices: readonly number[]): void {
  const user = addUser(records, 'Ada')
  const clients = [addClient(records, user, profileOf('Ann Able')), addClient(records, user, profileOf('Bo'))]
  const given = [begin(records, user, clients[0] ?? null)]
  const visits: string[] = []
  const deeds: readonly ((by: number) => void)[] = [
    (by) => clients.push(addClient(records, user, profileOf(`Client ${by}`, { number: `K-${by}` }))),
    (by) => {
      const profile = profileOf(`Renamed ${by}`)
      records.append(
        { kind: 'client', id: pick(clients, by) },
        [clientChanged.make({ profile, reason: '' })],
        user,
      )
    },
    (by) => given.push(begin(records, user, pick(clients, by))),
    (by) => give(records, pick(given, by), [tap(by)], user),
    (by) => give(records, pick(given, by), [tap(by), { kind: 'finished' }], user),
    (by) => give(records, pick(given, by), [assignedTo(pick(clients, by), 'Put right.')], user),
    (by) => give(records, pick(given, by), [{ kind: 'noted', text: `Note ${by}` }], user),
    (by) => give(records, pick(given, by), [{ kind: 'withdrawn', reason: 'Wrong test.' }], user),
    (by) => {
      visits.push(records.newId())
      const visit = visits.at(-1) ?? ''
      records.append({ kind: 'client', id: pick(clients, by) }, [visitOpened.make({ visit })], user)
    },
    (by) => {
      if (visits.length === 0) return
      const client = { kind: 'client', id: pick(clients, by) } as const
      records.append(client, [visitClosed.make({ visit: pick(visits, by) })], user)
    },
    (by) => {
      const key = { protocol: 'ring_board', norm: 'adults', table: String(by % 10).repeat(64) }
      records.append(CLINIC, [normVerified.make({ ...key, verified: by % 3 > 0 })], user)
    },
    (by) => {
      const settings = { mainKey: 'Space', pedalKey: null, bounceMs: by % 500, sound: true, showClock: false }
      records.append(CLINIC, [settingsChanged.make({ settings })], user)
    },
    (by) => {
      const piece = {
        id: records.newId(),
        item: 'board',
        ownName: `Board ${by}`,
        conditions: { board: 'oak' },
        unit: '',
        lastCheck: null,
        nextCheck: null,
      }
      records.append(CLINIC, [kitRegistered.make({ protocol: 'ring_board', piece })], user)
    },
  ]
  for (const choice of choices) deeds[choice % deeds.length]?.(Math.floor(choice / deeds.length))
}

test('every read model is equal after it was dropped and worked out anew, and again after a second time', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(fc.nat({ max: 10_000 }), { maxLength: 40 }), async (choices) => {
      const at = folder()
      const records = open(at)
      live(records, choices)
      expect((await records.verify(quietly)).problems).toEqual([])
      records.close()
      const before = tablesIn(at)
      for (const _ of ['once', 'twice']) {
        const again = open(at)
        again.rebuild()
        again.close()
        expect(tablesIn(at)).toEqual(before)
      }
    }),
    { numRuns: 20 },
  )
})

test('a read model that went wrong is right again after a rebuild', async () => {
  const at = folder()
  const records = open(at)
  const { client } = furnished(records)
  records.close()
  const before = tablesIn(at)
  raw(at, (database) => database.exec(`UPDATE client SET name = 'X'; DELETE FROM score; DELETE FROM kit`))
  const again = open(at)
  expect((await again.verify(quietly)).problems.map((problem) => problem.code)).toEqual([
    'read-model',
    'scores',
  ])
  again.rebuild()
  expect((await again.verify(quietly)).problems).toEqual([])
  expect(again.read.client(client)?.profile.name).toBe('Łukasz Ångström')
  again.close()
  expect(tablesIn(at)).toEqual(before)
})

test('appending goes on rightly after a rebuild in the same session', async () => {
  const records = open(folder())
  const { user, administration } = furnished(records)
  records.rebuild()
  give(records, administration, [tap(9), { kind: 'finished' }], user)
  expect(records.read.scoresOf(administration)).toMatchObject([{ value: 3 }])
  expect((await records.verify(quietly)).problems).toEqual([])
})

test('an administration that the domain can no longer read is listed as unreadable and spoils nothing else', async () => {
  const at = folder()
  const first = open(at)
  const { administration, client } = furnished(first)
  first.close()
  const broken: Projector<unknown> = {
    ...(counting as Projector<unknown>),
    take: () => {
      throw new Error('cannot read this')
    },
  }
  const again = open(at, { projector: broken })
  again.rebuild()
  expect(again.read.administrationsOf(client)).toMatchObject([
    { id: administration, phase: 'unreadable', on: '2026-03-02', examiner: { name: 'Ada' } },
  ])
  expect(again.administration(administration)).toHaveLength(5)
  again.close()
  const mended = open(at)
  mended.rebuild()
  expect(mended.read.administration(administration)?.phase).toBe('finished')
})

test('while it is given, an event that the domain cannot take is not kept', () => {
  const records = open(folder(), {
    projector: {
      ...(counting as Projector<unknown>),
      take: (state, event) => {
        if (event.body.kind === 'paused') throw new Error('not now')
        return counting.take(state as never, event)
      },
    },
  })
  const { user, administration } = furnished(records)
  expect(() => give(records, administration, [{ kind: 'paused', reason: 'A call.' }], user)).toThrow(
    'not now',
  )
  expect(records.administration(administration)).toHaveLength(5)
  expect(give(records, administration, [tap(3)], user)).toHaveLength(1)
})
