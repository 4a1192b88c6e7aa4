import { assert, integer, property } from 'fast-check'
import { expect, test } from 'vitest'
import { secondsBetween } from '../../protocols/runner/wall-time.ts'

const two = (n: number) => String(n).padStart(2, '0')

/** An instant as a wall clock shows it, so many minutes east of Greenwich. */
function shown(seconds: number, offset: number): string {
  const local = new Date((seconds + offset * 60) * 1000).toISOString().slice(0, 19)
  const minutes = Math.abs(offset)
  return `${local}${offset < 0 ? '-' : '+'}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`
}

test('STD-FMT-6 the time between two records does not depend on the zones they were written in', () => {
  const instant = integer({ min: 0, max: 4_000_000_000 })
  const offset = integer({ min: -720, max: 840 })
  assert(
    property(instant, integer({ min: 0, max: 40_000_000 }), offset, offset, (from, passed, here, there) => {
      expect(secondsBetween(shown(from, here), shown(from + passed, there))).toBe(passed)
    }),
  )
})

test('a clock that was set back, or a text that is no time, tells no gap', () => {
  expect(secondsBetween('2026-03-02T10:00:00Z', '2026-03-02T09:00:00Z')).toBe(0)
  expect(secondsBetween('yesterday', '2026-03-02T09:00:00Z')).toBe(0)
  expect(secondsBetween('2026-03-02T09:00:00.250Z', '2026-03-02T09:00:01.750+00:00')).toBe(1.5)
})
