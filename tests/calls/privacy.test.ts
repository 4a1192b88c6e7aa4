import { beforeEach, describe, expect, test } from 'vitest'
import { addClient, begin, type Desk, faultOf, give, openDesk, PEGS } from './desk.ts'
import { profileOf } from './profile.ts'

let desk: Desk
let ada = ''
let berit = ''
beforeEach(async () => {
  desk = await openDesk()
  ada = await addClient(desk, 'Ada Marsh')
  berit = await addClient(desk, 'Berit Holm')
  return () => desk.clinic.close()
})

describe('nobody is listed before it is needed', () => {
  test('a search lists nobody before three letters', async () => {
    for (const text of ['', 'a', 'ad', ' a d ', '..a'])
      expect(await desk.client.call('clients.search', { text })).toEqual({
        enough: false,
        found: [],
        more: false,
      })
    const { found, enough } = await desk.client.call('clients.search', { text: 'ada' })
    expect([enough, found.map(({ name }) => name)]).toEqual([true, ['Ada Marsh']])
  })

  test('before somebody sits at the desk, no answer shows a client', async () => {
    await desk.client.call('visits.open', { client: ada })
    const { folder } = desk
    desk.clinic.close()
    const { openClinic } = await import('../../main/calls/clinic.ts')
    const { handlersOf } = await import('../../main/calls/handlers.ts')
    const { createDispatcher } = await import('../../main/contract/dispatch.ts')
    const { LIBRARY, testClock } = await import('./desk.ts')
    const clinic = openClinic({ folder, library: LIBRARY, demo: false, clock: testClock() })
    const { dispatch } = createDispatcher({
      handlers: handlersOf(clinic),
      push: () => {},
      onDefect: () => {},
    })
    const reply = await dispatch({ id: 'x', user: null }, 'clinic.state', {}, crypto.randomUUID())
    expect(reply).toMatchObject({ ok: true, value: { visit: null } })
    expect(JSON.stringify(reply)).not.toContain('Marsh')
    clinic.close()
    desk = await openDesk({ folder })
  })
})

describe('while a visit is open no other client’s name is in any answer', () => {
  let beritsTest = ''
  beforeEach(async () => {
    beritsTest = (await give(desk, PEGS, berit)).id
    await desk.client.call('visits.open', { client: ada })
  })

  test('every call that could show somebody else is refused with a code', async () => {
    const { client } = desk
    const wrong = { store: 'records', id: beritsTest } as const
    const profile = profileOf({ name: 'Cora Dune' })
    const calls: [string, Promise<unknown>][] = [
      ['visit_open', client.call('clients.search', { text: 'berit' })],
      ['visit_open', client.call('clients.add', { profile })],
      ['visit_open', client.call('visits.open', { client: berit })],
      ['wrong_client', client.call('clients.read', { id: berit })],
      ['wrong_client', client.call('clients.change', { id: berit, profile, reason: '' })],
      ['wrong_client', client.call('administrations.proposal', { protocol: PEGS, client: berit })],
      ['wrong_client', client.call('history.read', { client: berit, protocol: 'nine_hole_peg' })],
      ['wrong_client', client.call('administrations.view', wrong)],
      ['wrong_client', client.call('administrations.result', wrong)],
      ['wrong_client', client.call('administrations.report', wrong)],
      ['wrong_client', client.call('administrations.note', { ...wrong, text: '' })],
      ['wrong_client', client.call('administrations.act', { ...wrong, body: { kind: 'resumed' } })],
      [
        'wrong_client',
        client.call('administrations.open', {
          store: 'records',
          protocol: PEGS,
          client: berit,
          wording: null,
        }),
      ],
      ['wrong_client', client.call('administrations.move', { id: beritsTest, client: ada, reason: 'x' })],
    ]
    for (const [code, call] of calls) expect((await faultOf(call))?.code).toBe(code)
  })

  test('what is answered names nobody else', async () => {
    const { client } = desk
    const answers = [
      await client.call('desk.waiting', {}),
      await client.call('clinic.state', {}),
      await client.call('clients.read', { id: ada }),
      await client.call('protocols.list', {}),
      await client.call('visits.open', { client: ada }),
    ]
    expect(JSON.stringify(answers)).not.toMatch(/Berit|Holm/)
    expect(await client.call('desk.waiting', {})).toEqual([])
  })

  test('when the visit is over, everybody is there again', async () => {
    const { visit } = await desk.client.call('clinic.state', {})
    await desk.client.call('visits.close', { visit: visit?.id ?? '' })
    expect((await desk.client.call('desk.waiting', {})).map(({ clientName }) => clientName)).toEqual([
      'Berit Holm',
    ])
    expect((await faultOf(desk.client.call('visits.close', { visit: visit?.id ?? '' })))?.code).toBe(
      'visit_closed',
    )
  })

  test('a visit is still open after a restart, so that the screen comes back to this client', async () => {
    const { folder } = desk
    desk.clinic.close()
    desk = await openDesk({ folder })
    expect((await desk.client.call('clinic.state', {})).visit).toMatchObject({ client: ada })
  })
})

describe('a test given to the wrong client is moved to the right one', () => {
  test('it is the right one’s from then on, and stays with the first as entered in error, without a name', async () => {
    const { id } = await give(desk, PEGS, ada)
    const moved = await desk.client.call('administrations.move', { id, client: berit, reason: 'Mixed up.' })
    expect(moved.client).toBe(berit)
    const first = await desk.client.call('clients.read', { id: ada })
    expect(first.administrations).toMatchObject([{ id, enteredInError: true, clientName: 'Ada Marsh' }])
    expect(JSON.stringify(first)).not.toContain('Berit')
    const second = await desk.client.call('clients.read', { id: berit })
    expect(second.administrations).toMatchObject([{ id, enteredInError: false, clientName: 'Berit Holm' }])
    expect(await desk.client.call('history.read', { client: ada, protocol: 'nine_hole_peg' })).toEqual([])
    const kinds = desk.clinic.stores.records.administration(id).map(({ body }) => body.kind)
    expect(kinds.filter((kind) => kind === 'assigned')).toHaveLength(2)
  })

  test('to the same client, to nobody, or with no reason it is refused', async () => {
    const { id } = await give(desk, PEGS, ada)
    const move = (client: string, reason: string) =>
      faultOf(desk.client.call('administrations.move', { id, client, reason }))
    expect((await move(ada, 'x'))?.code).toBe('same_client')
    expect((await move('01890000-0000-7000-8000-00000000dead', 'x'))?.code).toBe('no_such_client')
    expect((await move(berit, '  '))?.code).toBe('bad_input')
  })
})

const open = (store: 'records' | 'rehearsal', client: string | null) =>
  faultOf(desk.client.call('administrations.open', { store, protocol: PEGS, client, wording: null }))

describe('a rehearsal never mixes with records', () => {
  test('it lies in a store of its own and shows in no list of the clinic', async () => {
    const { id } = await give(desk, PEGS, null)
    expect(desk.clinic.stores.records.administration(id)).toEqual([])
    expect(desk.clinic.stores.rehearsal.administration(id).length).toBeGreaterThan(10)
    expect(await desk.client.call('desk.waiting', {})).toEqual([])
    const wrong = await faultOf(desk.client.call('administrations.view', { store: 'records', id }))
    expect(wrong?.code).toBe('no_such_administration')
    const { result } = await desk.client.call('administrations.result', { store: 'rehearsal', id })
    expect(result.rehearsal).toBe(true)
  })

  test('it has no client, and a record has one', async () => {
    expect((await open('rehearsal', ada))?.code).toBe('rehearsal_has_no_client')
    expect((await open('records', null))?.code).toBe('client_needed')
    expect((await open('records', '01890000-0000-7000-8000-00000000dead'))?.code).toBe('no_such_client')
  })

  test('it goes on while a visit is open', async () => {
    await desk.client.call('visits.open', { client: ada })
    expect((await begin(desk, PEGS, null)).rehearsal).toBe(true)
  })
})
