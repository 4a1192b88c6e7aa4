import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CLOCK, momentAfter, smallestStep, stampOf } from '../../renderer/input/clock.ts'
import { type Page, secondsLeft, secondsRun, whenOver } from '../../renderer/input/ticker.ts'

/** A page whose time only goes on when it is told to, and whose timers may fire early or late. */
function madePage(lateness: (ms: number) => number) {
  let now = 0
  const timers: { at: number; call: () => void; isOff: boolean }[] = []
  const page: Page = {
    now: () => now,
    later: (call, ms) => {
      const timer = { at: now + Math.max(0, lateness(ms)), call, isOff: false }
      timers.push(timer)
      return () => {
        timer.isOff = true
      }
    },
  }
  const run = (until: number): void => {
    for (;;) {
      const next = timers
        .filter((timer) => !timer.isOff && timer.at <= until)
        .sort((one, other) => one.at - other.at)[0]
      if (next === undefined) break
      next.isOff = true
      now = Math.max(now, next.at)
      next.call()
    }
    now = Math.max(now, until)
  }
  return { page, run, now: () => now }
}

const onTime = (ms: number): number => ms

describe('The clock outside the chart', () => {
  it('tells the end of a window at the very moment worked out from its start, however late the timer is', () => {
    const told: number[] = []
    const { page, run } = madePage((ms) => ms + 734.2)
    whenOver({ at: 12.345, clock: CLOCK }, 60_000, ({ at }) => told.push(at), page)
    run(200_000)
    expect(told).toEqual([60_012.345])
  })

  it('never tells it early, even where a timer fires too soon', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1e7, noNaN: true }),
        fc.integer({ min: 1, max: 100_000 }),
        fc.double({ min: 0.5, max: 3, noNaN: true }),
        (start, ms, factor) => {
          const { page, run, now } = madePage((wait) => Math.max(1, wait * factor))
          let toldAt: number | null = null
          whenOver(
            { at: start, clock: CLOCK },
            ms,
            () => {
              toldAt = now()
            },
            page,
          )
          run((start + ms) * 20 + 1000)
          expect(toldAt).not.toBeNull()
          expect((toldAt ?? 0) - start).toBeGreaterThanOrEqual(ms)
        },
      ),
    )
  })

  it('tells a moment that is not a hair short of its span, whatever the sum is rounded to', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1e9, noNaN: true }),
        fc.double({ min: 0.001, max: 1e6, noNaN: true }),
        (at, ms) => {
          const end = momentAfter({ at, clock: CLOCK }, ms)
          expect(end.at - at).toBeGreaterThanOrEqual(ms)
          expect(end.at - at).toBeLessThan(ms + 1e-3)
        },
      ),
    )
  })

  it('tells nothing once it was called off, and nothing for a start on another page’s clock', () => {
    const told: string[] = []
    const { page, run } = madePage(onTime)
    whenOver({ at: 0, clock: CLOCK }, 1000, () => told.push('called off'), page)()
    whenOver({ at: 0, clock: 'another' }, 1000, () => told.push('another clock'), page)
    run(10_000)
    expect(told).toEqual([])
  })

  it('counts down in whole seconds to zero and up in tenths from zero', () => {
    const start = { at: 1000, clock: CLOCK }
    expect([1000, 1001, 2000, 61_000, 70_000].map((now) => secondsLeft(start, 60_000, now))).toEqual([
      60, 60, 59, 0, 0,
    ])
    expect([900, 1000, 1099, 1100, 13_345].map((now) => secondsRun(start, now))).toEqual([0, 0, 0, 0.1, 12.3])
  })
})

describe('Stamps and the clock that they stand on', () => {
  it('keeps the event’s own time and says how late its handler was', () => {
    expect(stampOf({ at: 100.5, input: 'pedal' }, 345)).toEqual({
      at: 100.5,
      clock: CLOCK,
      input: 'pedal',
      late: 244.5,
    })
  })

  it('finds the smallest step of a clock, and none in a clock that stands still', () => {
    let reading = 0
    const inSteps = (): number => {
      reading += 1
      return Math.floor(reading / 7) * 0.1
    }
    expect(smallestStep(inSteps, 20, 10_000)).toBeCloseTo(0.1, 9)
    expect(smallestStep(() => 5, 20, 1000)).toBe(0)
  })
})
