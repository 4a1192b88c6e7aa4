/** A million events in one file: `npm run long -- events`. */
import { expect, test } from 'vitest'
import { manyEvents } from '../records/many-events.ts'

const EVENTS = 1_000_000

test('a million events: an append stays as quick, a start takes no longer', async () => {
  const { events, problems, append, appendAgainstBare, start, verify } = await manyEvents(EVENTS)
  console.log(
    `${events} events: append at the end ${append.toFixed(2)} × that at the start (${appendAgainstBare.toFixed(2)} × a bare transaction); start ${start.toFixed(2)} × that of an empty file; verify ${verify.toFixed(2)} × reading and hashing once`,
  )
  expect(problems).toEqual([])
  expect(append).toBeLessThanOrEqual(1.2)
  expect(start).toBeLessThanOrEqual(2)
})
