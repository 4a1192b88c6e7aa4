import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { hybridClock } from '../../main/records/hybrid-clock.ts'

const wall = Date.UTC(2026, 2, 2)

test('a stamp holds the wall time and, within a millisecond, a count', () => {
  const clock = hybridClock(null)
  expect([clock.tick(wall), clock.tick(wall), clock.tick(wall + 1)]).toEqual([
    `${wall.toString(16).padStart(12, '0')}0000`,
    `${wall.toString(16).padStart(12, '0')}0001`,
    `${(wall + 1).toString(16).padStart(12, '0')}0000`,
  ])
})

test('stamps only go forward, however the wall clock jumps and from whatever was seen before', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 2 ** 47 }),
      fc.integer({ min: 0xfff0, max: 0xffff }),
      fc.array(fc.integer({ min: 0, max: 2 ** 47 }), { maxLength: 50 }),
      (seen, count, walls) => {
        const last = seen.toString(16).padStart(12, '0') + count.toString(16).padStart(4, '0')
        const clock = hybridClock(last)
        const stamps = [last, ...walls.map(clock.tick), clock.tick(0), clock.tick(0)]
        expect(stamps.every((stamp) => /^[0-9a-f]{16}$/.test(stamp))).toBe(true)
        expect(new Set(stamps).size).toBe(stamps.length)
        expect(stamps.toSorted()).toEqual(stamps)
      },
    ),
  )
})
