/** A host that is stopped by the system in mid-trial, as by a laptop that is shut, and goes on. */
import { setTimeout as wait } from 'node:timers/promises'
import { expect } from 'vitest'
import { addSomebody, giveByWire, isInFlight } from '../hosts/giving-by-wire.ts'
import { newRecords, run, start } from '../hosts/program.ts'

/** @param ms how long it stands still  @returns how the trial ended, and the exit code of verifying the records then */
export async function standStill(ms: number) {
  const records = newRecords()
  const host = await start(['--records', records, '--no-open'])
  const { until, id } = await giveByWire(host.client, await addSomebody(host.client))
  const before = await until(isInFlight)
  host.child.kill('SIGSTOP')
  const going = until((view) => !isInFlight(view))
  await wait(ms)
  host.child.kill('SIGCONT')
  const after = await going
  const trial = before.trials.at(-1)?.id
  const ended = after.trials.find((one) => one.id === trial)
  const { view, saved } = await host.client.call('administrations.view', { store: 'records', id })
  expect([saved, view.trials]).toEqual([true, after.trials])
  expect(await host.end('SIGTERM')).toBe(0)
  const { code } = await run('evenhand.js', ['verify', '--records', records])
  return { status: ended?.status, outcome: ended?.outcome, verified: code }
}
