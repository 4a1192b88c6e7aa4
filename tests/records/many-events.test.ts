import { expect, test } from 'vitest'
import { manyEvents } from './many-events.ts'

test('a hundredth of a million events verify, and a start works nothing out of them', async () => {
  const { events, problems, start } = await manyEvents(10_000)
  expect(events).toBeGreaterThan(10_000)
  expect(problems).toEqual([])
  // Replaying them would take a hundred times as long as opening.
  expect(start).toBeLessThan(5)
}, 60_000)
