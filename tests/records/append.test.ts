import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { CLINIC, clientAdded, clientChanged, userAdded } from '../../main/records/index.ts'
import type { EventBody } from '../../protocols/runner/events.ts'
import {
  addClient,
  addUser,
  assignedTo,
  begin,
  folder,
  furnished,
  give,
  HASH,
  handClock,
  kindsOf,
  open,
  openedBy,
  profileOf,
  quietly,
  tap,
} from './clinic.ts'

test('a body that its stream does not have is refused before anything is written', () => {
  const records = open(folder())
  const user = addUser(records, 'Ada')
  const client = { kind: 'client', id: records.newId() } as const
  const administration = { kind: 'administration', id: records.newId() } as const
  const wrong = [
    () => records.append(client, [userAdded.make({ user, name: 'Ada' })], user),
    () => records.append(client, [{ kind: 'client-renamed' }], user),
    () =>
      records.append(
        client,
        [clientAdded.make({ profile: { ...profileOf('Ann'), name: 5 as never } })],
        user,
      ),
    () =>
      records.append(
        client,
        [{ ...clientAdded.make({ profile: profileOf('Ann') }), extra: 1 } as never],
        user,
      ),
    () => records.append(administration, [{ kind: 'opened' }], user),
    () => records.append(administration, [tap(1)], user),
    () => records.append(administration, [openedBy(user, 'Ada')], user),
    () => records.append(administration, [{ ...openedBy(user, 'Ada'), rehearsal: true } as never], user),
  ]
  for (const append of wrong) expect(append).toThrow(TypeError)
  expect(records.stream(client)).toEqual([])
  expect(records.stream(administration)).toEqual([])
})

test('an administration begins once', () => {
  const records = open(folder())
  const { user, administration } = furnished(records)
  expect(() => give(records, administration, [openedBy(user, 'Ada')], user)).toThrow(TypeError)
  expect(kindsOf(records.administration(administration))).toHaveLength(5)
})

test('several events are kept together or not at all', async () => {
  const records = open(folder())
  const user = addUser(records, 'Ada')
  const id = records.newId()
  const good = records.stamp({ kind: 'client', id }, [clientAdded.make({ profile: profileOf('Ann') })], user)
  const bad = records.stamp({ kind: 'administration', id: records.newId() }, [tap(1)], user)
  expect(() => records.keep([...good, ...bad])).toThrow(TypeError)
  expect(records.read.client(id)).toBeNull()
  expect(records.keep(good)).toMatchObject([{ sequence: 4 }])
  expect(records.read.client(id)?.profile.name).toBe('Ann')
  expect((await records.verify(quietly)).problems).toEqual([])
})

test('what was stamped once is kept once, however often it is tried', () => {
  const records = open(folder())
  const { user, administration } = furnished(records)
  const stamped = records.stamp({ kind: 'administration', id: administration }, [tap(3)], user)
  const first = records.keep(stamped)
  expect(records.keep(stamped)).toEqual(first)
  expect(records.keep([...stamped, ...stamped])).toEqual([...first, ...first])
  expect(records.administration(administration)).toHaveLength(6)
})

test('another body under a kept id is never taken for a retry', () => {
  const records = open(folder())
  const { user, administration } = furnished(records)
  const [stamped] = records.stamp({ kind: 'administration', id: administration }, [tap(3)], user)
  if (!stamped) throw new Error('nothing was stamped')
  records.keep([stamped])
  expect(() => records.keep([{ ...stamped, body: tap(4) }])).toThrow(TypeError)
})

test('an event keeps its time from when it was stamped, not from when the disk took it', () => {
  const clock = handClock()
  const records = open(folder(), { clock })
  const user = addUser(records, 'Ada')
  const held = records.stamp(CLINIC, [userAdded.make({ user: records.newId(), name: 'Bea' })], user)
  clock.move(90_000)
  expect(records.keep(held)[0]?.at).toBe('2026-03-02T10:00:00.000+01:00')
})

test('STD-ADM-4 a fresh database gives back protocol hash, version, language, program and clock resolution', () => {
  const at = folder()
  const first = open(at)
  const user = addUser(first, 'Ada')
  const id = begin(first, user, null)
  give(first, id, [{ kind: 'clock', clock: 'page-1', resolutionMs: 0.005, isolated: true }], user)
  first.close()
  const again = open(at)
  const [opened, , clock] = again.administration(id)
  expect(opened?.body).toMatchObject({
    protocol: { id: 'ring_board', version: '1.2.0', hash: HASH, language: 'en' },
    program: '0.1.0',
    examiner: { id: user, name: 'Ada' },
  })
  expect(opened?.at).toBe('2026-03-02T10:00:00.000+01:00')
  expect(clock?.body).toMatchObject({ resolutionMs: 0.005, isolated: true })
  expect(again.read.protocolFiles(HASH)?.get('norms/adults.csv')).toBe('sex,mean\nF,10\n')
})

test('a wrong client is put right: the first keeps the test as entered in error', () => {
  const records = open(folder())
  const { user, client, administration } = furnished(records)
  const right = addClient(records, user, profileOf('Bea'))
  give(records, administration, [assignedTo(right, 'It was Bea at the table.')], user)
  expect(records.read.administrationsOf(client)).toMatchObject([
    { id: administration, client: right, enteredInError: true },
  ])
  expect(records.read.administrationsOf(right)).toMatchObject([
    { id: administration, client: right, enteredInError: false, clientName: 'Bea' },
  ])
  give(records, administration, [assignedTo(client, 'No, it was the first one.')], user)
  expect(records.read.administrationsOf(right)).toMatchObject([{ enteredInError: true }])
  expect(records.read.administrationsOf(client)).toMatchObject([{ enteredInError: false }])
})

test('a test waits for its examiner until its note is taken or it is withdrawn', () => {
  const records = open(folder())
  const { user, client, administration } = furnished(records)
  const other = addUser(records, 'Bo')
  const reattributed: EventBody = {
    kind: 'reattributed',
    examiner: { id: other, name: 'Bo' },
    on: '2026-03-01',
    reason: 'Bo gave it.',
  }
  const waiting = (of: string) => records.read.waitingFor(of).map((row) => row.id)
  expect(waiting(user)).toEqual([administration])
  give(records, administration, [reattributed], user)
  expect([waiting(user), waiting(other)]).toEqual([[], [administration]])
  expect(records.read.administration(administration)).toMatchObject({ on: '2026-03-01' })
  give(records, administration, [{ kind: 'undone' }], user)
  expect([waiting(user), waiting(other)]).toEqual([[administration], []])
  expect(records.read.administration(administration)).toMatchObject({ on: '2026-03-02' })
  give(records, administration, [reattributed], user)
  give(records, administration, [{ kind: 'noted', text: 'Ring board: 2 rings.' }], other)
  expect(waiting(other)).toEqual([])
  const second = begin(records, user, client)
  expect(waiting(user)).toEqual([second])
  give(records, second, [{ kind: 'withdrawn', reason: 'Wrong test.' }], user)
  expect(waiting(user)).toEqual([])
  expect(records.read.administrationsOf(client)).toMatchObject([
    { id: second, enteredInError: true },
    { id: administration, enteredInError: false },
  ])
})

const act = fc.oneof(
  fc.record({
    kind: fc.constant('tapped.tap'),
    step: fc.constant('taps'),
    place: fc.constant({}),
    count: fc.nat(),
  }),
  fc.record({ kind: fc.constant('noted'), text: fc.string({ unit: 'binary', maxLength: 20 }) }),
  fc.record({ kind: fc.constant('paused'), reason: fc.constant('A call.') }),
  fc.record({ kind: fc.constant('finished') }),
) as fc.Arbitrary<EventBody>

test('any events come back as they were given, in order, after reopening, and verify', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(fc.array(act, { maxLength: 4 }), { maxLength: 6 }), async (batches) => {
      const at = folder()
      const first = open(at)
      const user = addUser(first, 'Ada')
      const id = begin(first, user, null)
      for (const batch of batches) give(first, id, batch, user)
      first.close()
      const again = open(at)
      const bodies = again.administration(id).map((event) => event.body)
      expect(bodies.slice(2)).toEqual(batches.flat())
      expect((await again.verify(quietly)).problems).toEqual([])
      again.close()
    }),
    { numRuns: 25 },
  )
})

test('a change of profile shows at once and keeps the first entry in the log', () => {
  const records = open(folder())
  const user = addUser(records, 'Ada')
  const id = addClient(records, user, profileOf('Ann Smith'))
  const stream = { kind: 'client', id } as const
  records.append(stream, [clientChanged.make({ profile: profileOf('Ann Smyth'), reason: 'Misspelt.' })], user)
  expect(records.read.client(id)?.profile.name).toBe('Ann Smyth')
  expect(records.stream(stream).map((entry) => entry.kind)).toEqual(['client-added', 'client-changed'])
})
