import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:net'
import { dirname, join, resolve } from 'node:path'
import { afterEach, beforeAll, describe, expect, test } from 'vitest'
import { ask } from './browser-end.ts'
import { addSomebody, giveByWire, isInFlight } from './giving-by-wire.ts'
import { buildProgram, newRecords, run, type Running, start } from './program.ts'

beforeAll(buildProgram, 120_000)

const open: Running[] = []
const begin = async (...words: string[]) => {
  const running = await start(words)
  open.push(running)
  return running
}
afterEach(async () => {
  for (const one of open.splice(0)) if (one.child.exitCode === null) await one.end('SIGKILL')
})

describe('the browser host as a process', () => {
  test('ends cleanly when it is told to, and says that everything is on disk', async () => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) {
      const host = await begin('--records', newRecords())
      expect(await host.end(signal)).toBe(0)
      expect(host.output()).toContain('everything is on disk')
    }
  })

  test('STD-ADM-10 killed in the middle of a trial, it goes on at the same step with nothing lost', async () => {
    const records = newRecords()
    const host = await begin('--records', records)
    const client = await addSomebody(host.client)
    const { id, until } = await giveByWire(host.client, client)
    const before = await until(isInFlight)
    expect(await host.end('SIGKILL')).toBeNull()

    const again = await begin('--records', records)
    const [user] = (await again.client.call('clinic.state', {})).users
    await again.client.call('users.choose', { id: user?.id ?? '' })
    const [waiting] = await again.client.call('desk.waiting', {})
    expect(waiting?.id).toBe(id)
    const { view } = await again.client.call('administrations.view', { store: 'records', id })
    const stood = before.trials.filter(({ status }) => status !== 'running')
    expect(view.trials.slice(0, stood.length)).toEqual(stood)
    const cut = view.trials.slice(stood.length)
    expect(cut).toMatchObject([{ status: 'void', void: { cause: 'restart' }, outcome: null }])
    const confirmed = await again.client.call('administrations.act', {
      store: 'records',
      id,
      body: { kind: 'confirmed', what: 'resume' },
    })
    expect(confirmed.view.step).toMatchObject({ name: before.step?.name, place: before.step?.place })
    expect(await again.end('SIGTERM')).toBe(0)
    expect((await run('evenhand.js', ['verify', '--records', records])).code).toBe(0)
  })

  test('a second instance on the same records says who has them and changes nothing', async () => {
    const records = newRecords()
    const first = await begin('--records', records)
    const second = await run('browser.js', ['--records', records, '--no-open'])
    expect([second.code, second.out]).toEqual([2, ''])
    expect(second.err).toContain(`process ${first.child.pid}`)
    expect(second.err).not.toContain('    at ')
    expect((await first.client.call('clinic.state', {})).recordsFolder).toBe(records)
  })

  test('a port that is taken is said, with what to do, and the records are let go', async () => {
    const other = createServer()
    await new Promise<void>((ready) => other.listen(0, '127.0.0.1', ready))
    const address = other.address()
    const port = String(typeof address === 'object' ? address?.port : '')
    const records = newRecords()
    const refused = await run('browser.js', ['--records', records, '--port', port, '--no-open'])
    other.close()
    expect(refused.code).toBe(2)
    expect(refused.err).toContain(`Port ${port} is taken`)
    expect((await begin('--records', records, '--port', port)).entry).toContain(`127.0.0.1:${port}/`)
  })

  test('a folder that can’t be written to is said, also where no folder can ever be made', async () => {
    const records = newRecords()
    writeFileSync(records, 'a file where the folder should be')
    for (const folder of [records, join(records, 'deeper'), '/proc/evenhand', '/dev/null']) {
      const refused = await run('browser.js', ['--records', folder, '--no-open'])
      expect([folder, refused.code]).toEqual([folder, 2])
      expect(refused.err).toContain('can’t be written to')
    }
  })

  test('a records file that isn’t one is said and left as it is', async () => {
    const records = newRecords()
    mkdirSync(records, { recursive: true })
    writeFileSync(join(records, 'records.db'), 'My shopping list')
    const refused = await run('browser.js', ['--records', records, '--no-open'])
    expect(refused.code).toBe(2)
    expect(refused.err).toContain('is no records file')
  })

  test('an unknown option is said before anything is opened', async () => {
    const refused = await run('browser.js', ['--dmeo'])
    expect(refused.code).toBe(2)
    expect(refused.err).toContain('--demo')
  })

  test('the demo lies apart from the records of the same folder, and says that it is one', async () => {
    const records = newRecords()
    const real = await begin('--records', records)
    const demo = await begin('--records', records, '--demo')
    expect(demo.output()).toContain('every client in it is invented')
    const states = [await real.client.call('clinic.state', {}), await demo.client.call('clinic.state', {})]
    expect(states.map((state) => [state.demo, state.users.length])).toEqual([
      [false, 0],
      [true, 2],
    ])
    expect(dirname(states[1]?.recordsFolder ?? '')).toBe(records)
  })

  test('the built screen is served with a nonce in place of every placeholder', async () => {
    const host = await begin('--records', newRecords())
    const { port, host: name, pathname, search } = new URL(host.entry)
    const entered = await ask({ port: Number(port), path: `${pathname}${search}`, headers: { host: name } })
    const cookie = String(entered.headers['set-cookie']?.[0]).split(';')[0] ?? ''
    const page = await ask({ port: Number(port), path: '/', headers: { host: name, cookie } })
    expect(page.body).toMatch(/nonce="[A-Za-z0-9+/=]{24}"/)
    expect(page.body).not.toContain('__NONCE__')
    const script = /src="\.?(\/assets\/[^"]+\.js)"/.exec(page.body)?.[1] ?? ''
    expect((await ask({ port: Number(port), path: script, headers: { host: name, cookie } })).status).toBe(
      200,
    )
  })
})

const LOOPBACK_ONLY = ['--import', resolve('tests/hosts/loopback-only.mjs')]
const ELECTRON_DOUBLE = ['--import', resolve('tests/hosts/electron-double.mjs')]

describe('with every socket denied but loopback', () => {
  test('STD-SEC-15 a whole test with its report makes no network call', async () => {
    const host = await start(['--records', newRecords()], { before: LOOPBACK_ONLY })
    open.push(host)
    const client = await addSomebody(host.client)
    const { id, until } = await giveByWire(host.client, client)
    await until(({ phase }) => phase === 'finished')
    const report = await host.client.call('administrations.report', { store: 'records', id })
    expect(report.pdfBase64.length).toBeGreaterThan(1000)
    await host.client.call('protocols.list', {})
    expect(host.output()).not.toContain('LEFT THE MACHINE')
    expect(await host.end('SIGTERM')).toBe(0)
  })

  test('the watch does see a call that leaves', async () => {
    const away = `import net from 'node:net'; try { net.connect(80, '192.0.2.1') } catch {}`
    const outward = ['--import', `data:text/javascript,${encodeURIComponent(away)}`]
    const { err } = await run('browser.js', ['--dmeo'], [...LOOPBACK_ONLY, ...outward])
    expect(err).toContain('LEFT THE MACHINE: connect 192.0.2.1')
  })
})

const desktop = (...words: string[]) => run('desktop.js', words, ELECTRON_DOUBLE)

describe('the built desktop program, on a double of its shell', () => {
  test('STD-SEC-12 opens its own page, sandboxed and isolated, and answers that page alone', async () => {
    const { code, out, err } = await desktop('--records', newRecords())
    expect([code, err]).toEqual([0, ''])
    const noted = JSON.parse(out)
    expect(noted.windows).toMatchObject([
      {
        webPreferences: { sandbox: true, contextIsolation: true, nodeIntegration: false, webSecurity: true },
      },
    ])
    expect(noted).toMatchObject({ url: 'evenhand://screen/', page: { status: 200 } })
    expect(noted.page.policy).toContain("default-src 'none'")
    expect(noted.answers.own).toMatchObject({ ok: true, value: { users: [] } })
    expect(noted.answers.foreign).toMatchObject({ ok: false, fault: { code: 'foreign_request' } })
  })

  test('a second one opens nothing and leaves the first to come forward', async () => {
    const records = newRecords()
    const { code, out, err } = await desktop('--records', records, '--as-second')
    expect([code, out, err]).toEqual([0, '', ''])
    expect(existsSync(records)).toBe(false)
  })

  test('says in a box why it can’t start', async () => {
    const records = newRecords()
    writeFileSync(records, 'a file where the folder should be')
    const { code, err } = await desktop('--records', records)
    expect(code).toBe(2)
    expect(err).toContain('Evenhand: The folder')
  })

  test('its preload is one small file that takes nothing else in', () => {
    const preload = readFileSync('out/preload/preload.cjs', 'utf8')
    expect(preload.length).toBeLessThan(3_000)
    expect([...preload.matchAll(/require\(["'`]([^"'`]+)["'`]\)/g)].map(([, name]) => name)).toEqual([
      'electron',
    ])
  })
})
