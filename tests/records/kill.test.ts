import { setTimeout as wait } from 'node:timers/promises'
import { expect, test } from 'vitest'
import { folder, open, quietly } from './clinic.ts'
import { startWriter } from './writer-process.ts'

/** ms after its first acknowledged events at which the writer is killed: spread by a fixed seed. */
const rounds = [3, 41, 17, 90, 8, 63].map((after, seed) => [seed + 1, after] as const)

test.each(rounds)(
  'killed in mid-append (round %i, after %i ms), every acknowledged event is there and none twice',
  async (seed, after) => {
    const at = folder()
    const writer = await startWriter([at, String(seed), '1000000'])
    await wait(after)
    await writer.kill()
    const acknowledged = writer
      .said()
      .map((line) => JSON.parse(line) as { administration: string; ids: string[] })
    expect(acknowledged.length).toBeGreaterThan(0)
    const records = open(at)
    const kept = records.administration(acknowledged[0]?.administration ?? '').map((event) => event.id)
    const said = acknowledged.flatMap((batch) => batch.ids)
    expect(kept.slice(2, 2 + said.length)).toEqual(said)
    expect(new Set(kept).size).toBe(kept.length)
    // At most one batch was on disk before the kill kept it from being said, and it is whole.
    expect(kept.length - 2 - said.length).toBeLessThanOrEqual(4)
    expect((await records.verify(quietly)).problems).toEqual([])
  },
)
