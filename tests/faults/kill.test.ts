import { beforeAll, expect, test } from 'vitest'
import { addSomebody, giveByWire, isInFlight } from '../hosts/giving-by-wire.ts'
import { buildProgram, newRecords, start } from '../hosts/program.ts'
import { drawn } from './drawn.ts'
import { quietly } from '../records/fixtures.ts'
import { addElevenKinds } from './eleven-kinds.ts'
import { checkKept, killedRound, MOST_CALLS, MOST_MS, resume, watched, withRecords } from './kills.ts'

const KINDS = [
  'kit',
  'position',
  'instruct',
  'demonstrate',
  'ask',
  'timed',
  'rated',
  'rest',
  'counted',
  'tapped',
  'measured',
] as const

beforeAll(buildProgram, 120_000)

test('killed at any moment of giving, the host loses no acknowledged event, doubles none, and goes on at its step', async () => {
  const folder = newRecords()
  const random = drawn(20_260_302)
  let [client, left]: [string | null, Awaited<ReturnType<typeof killedRound>>['left']] = [null, null]
  let acts = 0
  for (let round = 0; round < 4; round += 1) {
    const moment = { calls: 2 + Math.floor(random() * MOST_CALLS), ms: random() * MOST_MS }
    ;({ client, left } = await killedRound({ folder, ...moment, left, client }))
    acts += left?.acts ?? 0
  }
  expect(acts).toBeGreaterThan(0)
  const report = await withRecords(folder, (records) => records.verify(quietly))
  expect(report.problems).toEqual([])
}, 60_000)

test('killed in each kind of step, the log replays to the same state and the same step is at hand', async () => {
  const folder = newRecords()
  const every = addElevenKinds(folder)
  let host = await start(['--records', folder, '--no-open'])
  const client = await addSomebody(host.client)
  for (const kind of KINDS) {
    const seen = watched(host.client)
    const { id, until } = await giveByWire(seen.client, client, every)
    const before = await until(({ step }) => step?.kind === kind)
    const running = kind === 'timed' ? await until(isInFlight) : before
    await host.end('SIGKILL')
    const kept = await checkKept(folder, seen)
    expect([kind, kept?.view]).toEqual([kind, running])
    host = await start(['--records', folder, '--no-open'])
    const view = await resume(host, id)
    expect([kind, view.step?.name, view.step?.place]).toEqual([kind, before.step?.name, before.step?.place])
    const stood = running.trials.filter(({ status }) => status !== 'running')
    expect(view.trials.slice(0, stood.length)).toEqual(stood)
    expect(view.trials.slice(stood.length).map((trial) => [trial.status, trial.void?.cause])).toEqual(
      running.trials.length > stood.length ? [['void', 'restart']] : [],
    )
  }
  expect(await host.end('SIGTERM')).toBe(0)
}, 120_000)
