import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, afterEach, beforeAll, describe, expect, test, vi } from 'vitest'
import { CallFailed, type Client, createClient } from '../../main/contract/client.ts'
import { createDispatcher, type Dispatcher } from '../../main/contract/dispatch.ts'
import { Refused } from '../../main/contract/procedure.ts'
import type { Push } from '../../main/contract/pushes.ts'
import { httpTransport, type Transport } from '../../main/contract/transport.ts'
import { startServer } from '../../main/hosts/browser/server.ts'
import { createResponder } from '../../main/hosts/respond.ts'
import { enter } from '../hosts/browser-end.ts'
import { makeElectron } from '../hosts/electron-stand-in.ts'
import { handlersWith } from './handlers.ts'

const electron = vi.hoisted(() => ({ now: null as null | ReturnType<typeof makeElectron> }))
vi.mock('electron', async () => {
  const { makeElectron: make } = await import('../hosts/electron-stand-in.ts')
  electron.now = make()
  return electron.now.module
})

const ADA = { id: '01890000-0000-7000-8000-000000000001', name: 'Ada Venn' }
const CALL = { store: 'records', id: ADA.id } as const
const ENDLESS = { store: 'rehearsal', id: ADA.id } as const

interface Rig {
  readonly client: Client
  readonly transport: Transport
  readonly dispatcher: Dispatcher
  readonly defects: unknown[]
  push(push: Push): void
  close(): Promise<void>
}

function makeParts() {
  const listeners = new Set<(push: Push) => void>()
  const defects: unknown[] = []
  const push = (one: Push) => {
    for (const listener of listeners) listener(one)
  }
  const listen = (listener: (push: Push) => void) => {
    listeners.add(listener)
    return () => void listeners.delete(listener)
  }
  const dispatcher = createDispatcher({
    push,
    onDefect: (name, error) => defects.push([name, error]),
    handlers: handlersWith({
      'users.choose': ({ id }, { session }) => {
        if (id !== ADA.id) throw new Refused('no_such_user')
        session.user = ADA
        return ADA
      },
      'users.add': () => ({ ...ADA, secret: 'never crosses' }),
      'desk.waiting': () => {
        throw new TypeError('Rosa Marsh has no shoe')
      },
      'kit.list': (_, { user }) => [
        {
          id: user.id,
          item: 'board',
          ownName: user.name,
          conditions: {},
          unit: '',
          lastCheck: null,
          nextCheck: null,
        },
      ],
      'administrations.report': async ({ store }, { progress }) => {
        const steps = store === 'records' ? 50 : Number.POSITIVE_INFINITY
        for (let step = 0; step < steps; step += 1) await progress((step % 50) / 50, 'typesetting')
        return { fileName: 'report.pdf', pdfBase64: '' }
      },
    }),
  })
  return { dispatcher, defects, push, listen }
}

async function overHttp(screen: string): Promise<Rig> {
  const parts = makeParts()
  const server = await startServer({
    port: 0,
    respond: createResponder(screen),
    dispatch: parts.dispatcher.dispatch,
    listen: parts.listen,
  })
  const transport = httpTransport(await enter(server.entry))
  return { ...parts, transport, client: createClient(transport), close: () => server.close() }
}

async function overElectron(): Promise<Rig> {
  vi.resetModules()
  const parts = makeParts()
  const { answerCalls } = await import('../../main/hosts/desktop/shell.ts')
  await import('../../main/hosts/desktop/preload.ts')
  const { BrowserWindow } = await import('electron')
  const page = new BrowserWindow({})
  answerCalls({ dispatcher: parts.dispatcher, listen: parts.listen })
  const transport = electron.now?.exposed.evenhand as Transport
  const close = async () => {
    page.removeAllListeners()
    electron.now?.windows.splice(0)
  }
  return { ...parts, transport, client: createClient(transport), close }
}

let screen = ''
beforeAll(() => {
  screen = mkdtempSync(join(tmpdir(), 'evenhand-screen-'))
  writeFileSync(join(screen, 'index.html'), '<p>')
})
afterAll(() => rmSync(screen, { recursive: true }))

const failure = (promise: Promise<unknown>) =>
  promise.then(
    () => null,
    (error: unknown) => (error instanceof CallFailed ? error.fault : error),
  )

describe.each([
  ['HTTP', () => overHttp(screen)],
  ['the desktop shell', overElectron],
])('the contract over %s', (_, make) => {
  let rig: Rig
  afterEach(() => rig.close())

  test('answers a call with what its handler gave', async () => {
    rig = await make()
    expect(await rig.client.call('users.choose', { id: ADA.id })).toEqual(ADA)
  })

  test('knows who calls from the session and never from the call', async () => {
    rig = await make()
    const kit = { protocol: 'nine_hole_peg' }
    expect(await failure(rig.client.call('kit.list', kit))).toEqual({
      code: 'user_needed',
      detail: { name: 'kit.list' },
    })
    await rig.client.call('users.choose', { id: ADA.id })
    expect(await rig.client.call('kit.list', kit)).toMatchObject([{ ownName: ADA.name }])
  })

  test('refuses a name that is only inherited, and one that is none', async () => {
    rig = await make()
    for (const name of ['toString', '__proto__', 'constructor', 'clients.delete', ''])
      expect(await rig.transport.invoke(name, {}, crypto.randomUUID())).toEqual({
        ok: false,
        fault: { code: 'unknown_call', detail: { name } },
      })
  })

  test('STD-FMT-7 unknown keys and wrong types are refused with a pointer, at both ends', async () => {
    rig = await make()
    const wrong = [
      [{ id: ADA.id, user: ADA.id }, '/user'],
      [{ id: 7 }, '/id'],
      [{}, '/id'],
      ['text', ''],
      [null, ''],
      [{ id: ADA.id, 'a/b~c': 1 }, '/a~1b~0c'],
    ] as const
    for (const [input, at] of wrong) {
      const answered = await rig.transport.invoke('users.choose', input, crypto.randomUUID())
      expect(answered).toMatchObject({ ok: false, fault: { code: 'bad_input', detail: { at } } })
      const early = await failure(rig.client.call('users.choose', input as { id: string }))
      expect(early).toMatchObject({ code: 'bad_input', detail: { at } })
    }
    expect(rig.dispatcher.counts.get('users.choose')).toEqual({ made: 6, failed: 6, showedClient: 0 })
  })

  test('an answer that says more than its shape is held back', async () => {
    rig = await make()
    expect(await failure(rig.client.call('users.add', { name: 'Ada' }))).toMatchObject({
      code: 'bad_output',
      detail: { at: '/secret' },
    })
  })

  test('a refusal comes with its code; a defect says nothing of what it met', async () => {
    rig = await make()
    const nobody = { id: '01890000-0000-7000-8000-00000000dead' }
    expect(await failure(rig.client.call('users.choose', nobody))).toEqual({
      code: 'no_such_user',
      detail: {},
    })
    await rig.client.call('users.choose', { id: ADA.id })
    const fault = await failure(rig.client.call('desk.waiting', {}))
    expect(fault).toEqual({ code: 'defect', detail: { name: 'desk.waiting' } })
    expect(rig.defects).toHaveLength(1)
  })

  test('a long call tells how far it is and can be stopped', async () => {
    rig = await make()
    await rig.client.call('users.choose', { id: ADA.id })
    const heard: number[] = []
    const stop = new AbortController()
    const endless = rig.client.call('administrations.report', ENDLESS, {
      signal: stop.signal,
      onProgress: (share, doing) => {
        heard.push(share)
        expect(doing).toBe('typesetting')
        if (heard.length === 10) stop.abort()
      },
    })
    expect(await failure(endless)).toEqual({ code: 'stopped', detail: {} })
    const steps = heard.slice(1, 10).map((share, index) => (share - (heard[index] ?? 0) + 1) % 1)
    for (const step of steps) expect(step).toBeCloseTo(1 / 50)
  })

  test('a long call can be stopped only by the session that made it', async () => {
    rig = await make()
    const id = crypto.randomUUID()
    const stranger = { id: 'another', user: ADA }
    const own = { id: 'own', user: ADA }
    const left = rig.dispatcher.dispatch(own, 'administrations.report', CALL, id)
    await rig.dispatcher.dispatch(stranger, 'calls.stop', { call: id }, crypto.randomUUID())
    expect(await left).toMatchObject({ ok: true })
    const again = rig.dispatcher.dispatch(own, 'administrations.report', ENDLESS, id)
    await rig.dispatcher.dispatch(own, 'calls.stop', { call: id }, crypto.randomUUID())
    expect(await again).toMatchObject({ ok: false, fault: { code: 'stopped' } })
  })

  test('pushes reach every listener, and a malformed one none', async () => {
    rig = await make()
    const heard: Push[] = []
    const first = Promise.withResolvers<void>()
    const deaf = rig.client.listen((push) => {
      heard.push(push)
      first.resolve()
    })
    rig.push({ push: 'gossip' } as unknown as Push)
    const knock = setInterval(() => rig.push({ push: 'clinic' }), 5)
    await first.promise
    clearInterval(knock)
    deaf()
    expect(new Set(heard.map((one) => one.push))).toEqual(new Set(['clinic']))
  })
})

describe('a client whose host has gone', () => {
  test('says so instead of hanging or throwing something else', async () => {
    const gone: Transport = {
      invoke: () => Promise.reject(new TypeError('fetch failed')),
      listen: () => () => {},
    }
    expect(await failure(createClient(gone).call('clinic.state', {}))).toEqual({
      code: 'host_gone',
      detail: { name: 'clinic.state' },
    })
  })

  test('takes nothing that is no reply', async () => {
    const odd: Transport = { invoke: async () => ({ ok: 'yes' }), listen: () => () => {} }
    expect(await failure(createClient(odd).call('clinic.state', {}))).toMatchObject({ code: 'bad_reply' })
  })
})
