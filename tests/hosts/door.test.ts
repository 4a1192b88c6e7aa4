import { networkInterfaces } from 'node:os'
import { connect } from 'node:net'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { createDispatcher } from '../../main/contract/dispatch.ts'
import { type BrowserServer, startServer } from '../../main/hosts/browser/server.ts'
import { createResponder } from '../../main/hosts/respond.ts'
import { handlersWith } from '../contract/handlers.ts'
import { type Answer, ask, enter } from './browser-end.ts'
import { makeScreen } from './screen-folder.ts'

const USER = { id: '01890000-0000-7000-8000-000000000001', name: 'Ada Venn' }
let server: BrowserServer
let added = 0
let good: Record<string, string>

beforeAll(async () => {
  const { dispatch } = createDispatcher({
    push: () => {},
    onDefect: () => {},
    handlers: handlersWith({
      'users.add': () => {
        added += 1
        return USER
      },
    }),
  })
  server = await startServer({
    port: 0,
    respond: createResponder(makeScreen()),
    dispatch,
    listen: () => () => {},
  })
  const { cookie } = await enter(server.entry)
  const host = `127.0.0.1:${server.port}`
  good = { host, origin: `http://${host}`, cookie, 'content-type': 'application/json' }
})
afterAll(() => server.close())

const call = (headers: Record<string, string>, body = '{"name":"Ada"}') =>
  ask({ port: server.port, path: '/call/users.add', method: 'POST', headers, body })
const without = (...names: string[]) =>
  Object.fromEntries(Object.entries(good).filter(([name]) => !names.includes(name)))
const codeOf = (answer: Answer): unknown => JSON.parse(answer.body).fault?.code

describe('the browser host lets in only the browser that was shown the address of this launch', () => {
  test('STD-SEC-13 the loopback host refuses a wrong Host, Origin, token, cookie or content type', async () => {
    const before = added
    const refused: [string, Record<string, string>, number][] = [
      ['a name rebound to this machine', { ...good, host: `evil.example:${server.port}` }, 421],
      ['localhost by name', { ...good, host: `localhost:${server.port}` }, 421],
      ['another port in Host', { ...good, host: '127.0.0.1:1' }, 421],
      ['a page on another port', { ...good, origin: 'http://127.0.0.1:1' }, 403],
      ['another site', { ...good, origin: 'https://evil.example' }, 403],
      ['a sandboxed page', { ...good, origin: 'null' }, 403],
      ['no Origin', without('origin'), 403],
      ['no cookie', without('cookie'), 403],
      ['a guessed cookie', { ...good, cookie: `evenhand_${server.port}=AAAA` }, 403],
      ['the cookie of another port', { ...good, cookie: good.cookie?.replace(/_\d+/, '_1') ?? '' }, 403],
      ['a form', { ...good, 'content-type': 'application/x-www-form-urlencoded' }, 403],
      ['plain text', { ...good, 'content-type': 'text/plain' }, 403],
      ['no content type', without('content-type'), 403],
    ]
    for (const [who, headers, status] of refused)
      expect([who, (await call(headers)).status]).toEqual([who, status])
    expect(added).toBe(before)
    expect((await call(good)).status).toBe(200)
    expect(added).toBe(before + 1)
  })

  test('a wrong or missing token opens nothing and sets no cookie', async () => {
    const { host } = good
    const { searchParams } = new URL(server.entry)
    const token = searchParams.get('token') ?? ''
    expect(Buffer.from(token, 'base64url')).toHaveLength(32)
    for (const shown of ['', 'x', token.slice(1), `${token}x`, token.toLowerCase()]) {
      const answer = await ask({
        port: server.port,
        path: `/enter?token=${shown}`,
        headers: { host: host ?? '' },
      })
      expect(answer.status).toBe(403)
      expect(answer.headers['set-cookie']).toBeUndefined()
      expect(answer.body).not.toContain(token)
    }
  })

  test('the right token gives a cookie that scripts and other sites never get, and an address without it', async () => {
    const { pathname, search, host } = new URL(server.entry)
    const answer = await ask({ port: server.port, path: `${pathname}${search}`, headers: { host } })
    expect(answer.status).toBe(303)
    expect(answer.headers.location).toBe('/')
    const cookie = String(answer.headers['set-cookie'])
    expect(cookie).toContain(`evenhand_${server.port}=`)
    expect(cookie).toContain('HttpOnly')
    expect(cookie).toContain('SameSite=Strict')
  })

  test('the page itself is shown to nobody without the cookie', async () => {
    const headers = without('cookie', 'origin', 'content-type')
    expect((await ask({ port: server.port, path: '/', headers })).status).toBe(403)
    expect((await ask({ port: server.port, path: '/pushes', headers })).status).toBe(403)
    const seen = await ask({
      port: server.port,
      path: '/',
      headers: { ...headers, cookie: good.cookie ?? '' },
    })
    expect(seen.status).toBe(200)
  })

  test('no other interface of the machine answers', async () => {
    const others = Object.values(networkInterfaces())
      .flat()
      .filter((one) => one && one.family === 'IPv4' && !one.internal)
    const outcomes = await Promise.all(
      [...others.map((one) => one?.address ?? ''), '127.0.0.2', '::1'].map(
        (address) =>
          new Promise((resolve) => {
            const socket = connect({ host: address, port: server.port })
            socket.on('connect', () => resolve(`${address} answers`))
            socket.on('error', () => resolve('refused'))
            socket.setTimeout(2_000, () => resolve('refused'))
          }),
      ),
    )
    expect(new Set(outcomes)).toEqual(new Set(['refused']))
  })

  test('a body beyond the limit or that is no JSON is refused with a code', async () => {
    const before = added
    const large = await call(good, JSON.stringify({ name: 'x'.repeat(1_000_001) }))
    expect([large.status, codeOf(large)]).toEqual([413, 'body_too_large'])
    const broken = await call(good, '{"name":')
    expect([broken.status, codeOf(broken)]).toEqual([400, 'not_json'])
    expect(added).toBe(before)
  })

  test('a call by another method changes nothing', async () => {
    const before = added
    for (const method of ['GET', 'PUT', 'DELETE', 'OPTIONS', 'HEAD'])
      expect((await ask({ port: server.port, path: '/call/users.add', method, headers: good })).status).toBe(
        403,
      )
    expect(added).toBe(before)
  })

  test('an old session says that it is over, so that the screen can say so', async () => {
    const answer = await call({ ...good, cookie: `evenhand_${server.port}=old` })
    expect(codeOf(answer)).toBe('session_over')
  })
})

const page = (path: string) => {
  const headers = { host: good.host ?? '', cookie: good.cookie ?? '' }
  return ask({ port: server.port, path, headers })
}

const nonceIn = (answer: Answer) =>
  /'nonce-([^']+)'/.exec(String(answer.headers['content-security-policy']))?.[1] ?? 'none'

describe('the screen is served as an isolated page that can load nothing from elsewhere', () => {
  test('every answer forbids framing, guessing and sharing', async () => {
    for (const path of ['/', '/assets/main.js', '/nothing', '/enter?token=x']) {
      const { headers } = await page(path)
      expect({ path, ...headers }).toMatchObject({
        path,
        'cross-origin-opener-policy': 'same-origin',
        'cross-origin-embedder-policy': 'require-corp',
        'x-content-type-options': 'nosniff',
        'cache-control': 'no-store',
      })
    }
  })

  test('the policy names no source but the program itself, with a fresh nonce that the page carries', async () => {
    const [first, second] = [await page('/'), await page('/')]
    const policy = String(first.headers['content-security-policy'])
    expect(policy).toContain("default-src 'none'")
    expect(policy).not.toMatch(/unsafe|https?:|\*/)
    expect(first.body).toContain(`nonce="${nonceIn(first)}"`)
    expect(first.body).not.toContain('__NONCE__')
    expect(nonceIn(first)).not.toBe(nonceIn(second))
  })

  test('no path leads out of the screen’s own files', async () => {
    const paths = [
      '/../secret.txt',
      '/%2e%2e/secret.txt',
      '/..%2fsecret.txt',
      '//secret.txt',
      '/assets',
      '/%00',
    ]
    for (const path of paths) {
      const answer = await page(path)
      expect([path, answer.status, answer.body]).toEqual([path, 404, ''])
    }
  })
})
