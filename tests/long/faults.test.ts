/** Five hundred kills of the real host while it gives tests, and two thousand flipped bits: `npm run long -- faults`. */
import { expect, test } from 'vitest'
import { killedRound, MOST_CALLS, MOST_MS, withRecords } from '../faults/kills.ts'
import { flipped } from '../faults/damage.ts'
import { standStill } from '../faults/standing-still.ts'
import { newRecords } from '../hosts/program.ts'
import { drawn } from '../faults/drawn.ts'
import { quietly } from '../records/fixtures.ts'

const KILLS = 500
/** Kills of one folder of records, before the next begins a new one. */
const PER_FOLDER = 50
const FLIPS = 2000
const SEED = 20_261_201

test('killed five hundred times, the host loses no acknowledged event, doubles none, and goes on at its step', async () => {
  const random = drawn(SEED)
  let acts = 0
  let inAct = 0
  for (let done = 0; done < KILLS; done += PER_FOLDER) {
    const folder = newRecords()
    let [client, left]: [string | null, Awaited<ReturnType<typeof killedRound>>['left']] = [null, null]
    for (let round = 0; round < PER_FOLDER; round += 1) {
      const moment = { calls: 2 + Math.floor(random() * MOST_CALLS), ms: random() * MOST_MS }
      ;({ client, left } = await killedRound({ folder, ...moment, left, client }))
      acts += left?.acts ?? 0
      inAct += left?.unanswered ?? 0
    }
    const report = await withRecords(folder, (records) => records.verify(quietly))
    expect(report.problems).toEqual([])
    console.log(
      `${done + PER_FOLDER} kills: ${acts} acts acknowledged and kept, ${inAct} kept before they were answered; ${report.events} events verified`,
    )
  }
})

test('each of two thousand bits that flipped is found, or no row is another for it', async () => {
  const { found, harmless } = await flipped(FLIPS)
  console.log(`${FLIPS} flipped bits: ${found} found, ${harmless} without any effect on a row`)
  expect(found + harmless).toBe(FLIPS)
})

test('a host that stood still for ten seconds in mid-trial loses nothing', async () => {
  expect(await standStill(10_000)).toEqual({ status: 'standing', outcome: 'done', verified: 0 })
})
