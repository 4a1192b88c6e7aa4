import { expect, test, vi } from 'vitest'
import { readMutated } from './read-mutated.ts'

vi.setConfig({ testTimeout: 120_000 })

test('files that nobody would write end in diagnostics or in a protocol, soon, and never in an exception', () => {
  const { broken, sound } = readMutated(0, 2000)
  expect(broken).toEqual([])
  // Both ends are met often: mutations that always broke a file would try only how it is refused.
  expect(sound).toBeGreaterThan(50)
  expect(sound).toBeLessThan(1500)
})
