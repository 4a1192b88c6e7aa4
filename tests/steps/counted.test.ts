import { beforeEach, describe, expect, test } from 'vitest'
import { Giving, madeProtocol } from '../runner/giving.ts'

const PROTOCOL = madeProtocol(`
  - { counted: moved, window: 60 s, start: { said: go }, unit: "{block}", range: [0, 150] }
`)

let giving: Giving
beforeEach(() => {
  giving = new Giving(PROTOCOL).begin()
})

const end = (at: number) => giving.take(giving.body('window_ended', { at, clock: giving.clock }))

describe('a count within a window', () => {
  test('keeps what was tapped along and what was counted at the end', () => {
    giving.count(12, 60, 14)
    expect(giving.rows('moved')).toEqual(['done tapped 12 count 14'])
    const [trial] = giving.view().trials
    expect(trial?.readings.count).toMatchObject({ unit: '{block}', typed: true })
    expect(trial?.readings.tapped).toMatchObject({ unit: '{block}', typed: false })
    expect(giving.where()).toBe('end')
  })

  test('the window ends by the clock, no earlier', () => {
    giving.start()
    const start = giving.now
    expect(end(start + 59_999)).toBe('window_not_over')
    expect(end(start + 60_000)).toBeNull()
    expect(giving.where()).toBe('moved: ended')
  })

  test('a tick at the very end is at the end, whatever the last digits of its stamp', () => {
    giving.arm()
    giving.now = 66_913_400.0 + 0.1
    giving.press('started', 0.2)
    const start = giving.now
    expect(end(start + 60_000)).toBeNull()
  })

  test('presses after the end are kept and do not count, even before the end was noticed', () => {
    giving.start()
    const start = giving.now
    giving.press('tapped', 59_000).press('tapped', 1001)
    end(start + 60_000)
    giving.press('tapped', 10)
    expect(giving.view().step?.face).toMatchObject({ tapped: 1 })
    expect(giving.view().trials[0]?.stamps).toEqual([start, start + 60_000, start + 60_001, start + 60_011])
  })

  test('a press within the window counts, however late it is handled', () => {
    giving.start()
    const start = giving.now
    end(start + 60_000)
    giving.now = start
    giving.press('tapped', 59_999.5)
    expect(giving.view().step?.face).toMatchObject({ tapped: 1 })
    expect(giving.view().trials[0]?.readings.tapped).toMatchObject({ value: 1 })
    giving.do({ kind: 'undone' })
    expect(giving.view().trials[0]?.readings.tapped).toMatchObject({ value: 0 })
  })

  test('STD-ADM-12 a count outside the plausible range is asked for again', () => {
    giving.start()
    end(giving.now + 60_000)
    const enter = (count: number, confirmed: boolean) =>
      giving.take(giving.body('entered', { count, confirmed }))
    expect(enter(151, false)).toBe('out_of_range')
    expect(enter(-1, true)).toBe('malformed')
    expect(enter(12.5, true)).toBe('malformed')
    expect(enter(151, true)).toBeNull()
    expect(giving.view().trials[0]?.readings.count).toMatchObject({ value: 151, confirmed: true })
    expect(enter(51, false)).toBeNull()
    giving.now += 65_000
    giving.press('kept')
    expect(giving.rows('moved')).toEqual(['done tapped 0 count 51'])
    expect(giving.view().trials[0]?.readings.count?.confirmed).toBe(false)
  })

  test('a window that ends on another clock gives no count', () => {
    giving.start()
    giving.clock = 'page-2'
    expect(end(70_000)).toBeNull()
    expect(giving.where()).toBe('moved: waiting')
    expect(giving.view().trials[0]).toMatchObject({ status: 'void', void: { cause: 'clock_changed' } })
  })

  test('undo takes back one tap', () => {
    giving.start().press('tapped', 500).press('tapped', 500)
    giving.do({ kind: 'undone' })
    expect(giving.view().step?.face).toMatchObject({ tapped: 1 })
    expect(giving.where()).toBe('moved: running')
  })
})
