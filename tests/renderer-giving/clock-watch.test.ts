import * as fc from 'fast-check'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import {
  distrust,
  LOOK_EVERY,
  type Reading,
  readTogether,
  watchClocks,
} from '../../renderer/input/clock-watch.ts'

const START: Reading = { monotonic: 1000, wall: 1_700_000_000_000 }
const after = (monotonic: number, wall = monotonic): Reading => ({
  monotonic: START.monotonic + monotonic,
  wall: START.wall + wall,
})

describe('What two looks at the clocks tell', () => {
  it('trusts looks in time, late ones of a busy page, and a clock that is slewed', () => {
    for (const [monotonic, wall] of [
      [500, 500],
      [3400, 3400],
      [500, 500.3],
      [510, 700],
    ] as const)
      expect(distrust(START, after(monotonic, wall))).toBeNull()
  })

  it('a page that stood still, or a sleep through which the monotonic clock went on, is told as such', () => {
    expect(distrust(START, after(10_000))).toBe('suspended')
    expect(distrust(START, after(40_000, 40_000))).toBe('suspended')
  })

  it('a sleep that the monotonic clock has missed shows as clocks that moved apart', () => {
    expect(distrust(START, after(505, 10_505))).toBe('clock_changed')
    expect(distrust(START, after(505, 1505))).toBe('clock_changed')
  })

  it('a wall clock that was set forward or back is told as such', () => {
    expect(distrust(START, after(505, 3_600_505))).toBe('clock_changed')
    expect(distrust(START, after(505, -86_400_000))).toBe('clock_changed')
  })

  it('never trusts clocks that moved apart by more than a quarter of a second, in whatever way', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1e6, noNaN: true }),
        fc.double({ min: 251, max: 1e9, noNaN: true }),
        fc.boolean(),
        (passed, jump, isForward) => {
          expect(distrust(START, after(passed, passed + (isForward ? jump : -jump)))).not.toBeNull()
        },
      ),
    )
  })
})

describe('Reading both clocks', () => {
  it('reads again when something came between the two readings', () => {
    const monotonic = [0, 400, 410, 410.5]
    const wall = [1000, 1410]
    const read = readTogether(
      () => monotonic.shift() ?? Number.NaN,
      () => wall.shift() ?? Number.NaN,
    )
    expect(read).toEqual({ monotonic: 410, wall: 1410 })
  })
})

describe('The watch', () => {
  beforeEach(() => void vi.useFakeTimers())
  afterEach(() => void vi.useRealTimers())

  it('looks by itself and when it is asked, tells each break once, and is quiet once it has ended', () => {
    let now = after(0)
    const told: string[] = []
    const watch = watchClocks(
      (why) => told.push(why),
      () => now,
    )
    now = after(LOOK_EVERY)
    vi.advanceTimersByTime(LOOK_EVERY)
    expect(told).toEqual([])
    now = after(LOOK_EVERY + 5, LOOK_EVERY + 60_005)
    expect([watch.look(), watch.look()]).toEqual([false, true])
    now = after(60_000, 120_000)
    vi.advanceTimersByTime(LOOK_EVERY)
    expect(told).toEqual(['clock_changed', 'suspended'])
    watch.end()
    now = after(600_000)
    vi.advanceTimersByTime(10 * LOOK_EVERY)
    expect(told).toHaveLength(2)
  })
})
