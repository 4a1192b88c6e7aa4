import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, expect, test } from 'vitest'
import { addSomebody } from './giving-by-wire.ts'
import { buildProgram, newRecords, run, start } from './program.ts'

beforeAll(buildProgram, 120_000)

test('a host that finds its records damaged sets them aside, says so with the place, and goes on with what can be read', async () => {
  const records = newRecords()
  const host = await start(['--records', records, '--no-open'])
  const client = await addSomebody(host.client)
  expect(await host.end('SIGTERM')).toBe(0)
  // As if an older copy had been put in its place: less is there than was witnessed.
  const note = join(records, 'sealed.json')
  const older = readFileSync(note)
  const before = readFileSync(join(records, 'records.db'))
  const again = await start(['--records', records, '--no-open'])
  await again.client.call('users.add', { name: 'Ben Yew' })
  expect(await again.end('SIGTERM')).toBe(0)
  writeFileSync(join(records, 'records.db'), before)
  expect(readFileSync(note)).not.toEqual(older)

  const third = await start(['--records', records, '--no-open'])
  const aside = readdirSync(records).filter((name) => name.startsWith('set-aside-'))
  expect(aside).toHaveLength(1)
  expect(readFileSync(join(records, aside[0] ?? '', 'records.db'))).toEqual(before)
  expect(third.output()).toContain(join(records, aside[0] ?? ''))
  expect(third.output()).toMatch(/\d+ (is|are) missing/)
  const [user] = (await third.client.call('clinic.state', {})).users
  await third.client.call('users.choose', { id: user?.id ?? '' })
  expect((await third.client.call('clients.read', { id: client })).client.id).toBe(client)
  expect(await third.end('SIGTERM')).toBe(0)
  expect((await run('evenhand.js', ['verify', '--records', records])).code).toBe(0)
})

test('backup, restore and salvage do from the command line what they say, each with its exit code', async () => {
  const records = newRecords()
  const host = await start(['--records', records, '--no-open'])
  await addSomebody(host.client)
  expect((await run('evenhand.js', ['backup', '--records', records])).code).toBe(2)
  expect(await host.end('SIGTERM')).toBe(0)
  const made = await run('evenhand.js', ['backup', '--records', records, '--json'])
  expect(made.code).toBe(0)
  const { folder, events } = JSON.parse(made.out)
  const other = newRecords()
  const restored = await run('evenhand.js', ['restore', folder, '--records', other])
  expect([restored.code, restored.err]).toEqual([0, ''])
  expect(restored.out).toContain(`${events} events`)
  expect((await run('evenhand.js', ['restore', folder, '--records', records])).code).toBe(0)
  expect((await run('evenhand.js', ['restore', records, '--records', other])).code).toBe(2)
  const salvaged = await run('evenhand.js', ['salvage', '--records', other, '--json'])
  expect([salvaged.code, JSON.parse(salvaged.out)]).toMatchObject([
    0,
    { kept: events, lost: 0, altered: 0, of: [] },
  ])
  expect((await run('evenhand.js', ['verify', '--records', other])).code).toBe(0)
})
