import { beforeEach, describe, expect, test } from 'vitest'
import { Giving, madeProtocol } from '../runner/giving.ts'

const PROTOCOL = madeProtocol(
  `
  - { timed: run, start: { said: go }, stop: { seen: Board is empty. }, limit: 60 s, range: [5, 60], counts-as: { limit: over 60 s } }
  - { timed: again, start: { said: go }, stop: { seen: Board is empty. } }
`,
  `
happenings:
  fell: { seen: A ring falls., then: tally, key: f, adds: 5 s }
`,
)

let giving: Giving
beforeEach(() => {
  giving = new Giving(PROTOCOL).begin()
})

describe('one key gives a timed trial', () => {
  test('it arms, starts, stops, and after the dead second keeps and goes on', () => {
    expect(giving.where()).toBe('run: waiting')
    giving.press('armed')
    expect(giving.where()).toBe('run: armed')
    giving.press('started')
    expect(giving.where()).toBe('run: running')
    giving.press('stopped', 12_340)
    expect(giving.where()).toBe('run: stopped')
    expect(giving.view().step?.face).toMatchObject({ time: 12.34, outcome: 'done' })
    giving.press('kept', 1000)
    expect(giving.where()).toBe('again: waiting')
    expect(giving.rows('run')).toEqual(['done time 12.34 added 0'])
  })

  test('the main key does one thing in each state, and the view says which', () => {
    const main = () =>
      giving
        .view()
        .offers.filter((offer) => offer.main)
        .map(({ event }) => event)
    expect(main()).toEqual(['timed.armed'])
    giving.press('armed')
    expect(main()).toEqual(['timed.started'])
    giving.press('started')
    expect(main()).toEqual(['timed.stopped'])
    giving.press('stopped', 9000)
    expect(main()).toEqual(['timed.kept'])
  })

  test('the time is the difference of the two stamps, to the stamp', () => {
    giving.arm()
    giving.now = 50_000.125
    giving.press('started', 0)
    giving.press('stopped', 17_333.375)
    giving.press('kept')
    const [trial] = giving.view().trials
    expect(trial?.readings.time?.value).toBe((67_333.5 - 50_000.125) / 1000)
    expect(trial?.stamps).toEqual([50_000.125, 67_333.5])
    expect(trial?.input).toBe('key')
  })
})

test('how late a press was handled is no part of the time, and told with the trial', () => {
  giving.start()
  const stamp = { ...giving.stamp(9000), late: 345 }
  giving.do(giving.body('stopped', { stamp })).press('kept')
  expect(giving.view().trials[0]).toMatchObject({ lateMs: 345, readings: { time: { value: 9 } } })
})

describe('a stop never starts', () => {
  test('STD-ADM-5 a press within a second after the stop does nothing', () => {
    giving.start().press('stopped', 10_000)
    expect(giving.tryPress('kept', 999)).toBe('key_dead')
    giving.now -= 999
    expect(giving.tryPress('kept', 0)).toBe('key_dead')
    expect(giving.tryPress('started', 2000)).toBe('not_now')
    expect(giving.where()).toBe('run: stopped')
    expect(giving.rows('run')).toEqual([])
  })

  test('the dead second has two ends: a press stamped well before the stop is no bounce of it', () => {
    giving.start().press('stopped', 10_000)
    const before = (ms: number) => giving.body('kept', { stamp: { ...giving.stamp(0), at: giving.now - ms } })
    expect(giving.take(before(999))).toBe('key_dead')
    expect(giving.take(before(1001))).toBeNull()
    expect(giving.rows('run')).toEqual(['done time 10 added 0'])
  })

  test('the first press after a void only arms, and not within the dead second', () => {
    giving.start().press('voided', 4000)
    expect(giving.where()).toBe('run: waiting')
    expect(giving.tryPress('started')).toBe('not_now')
    giving.now -= 2000
    expect(giving.tryPress('armed', 500)).toBe('key_dead')
    expect(giving.tryPress('armed', 501)).toBeNull()
    expect(giving.where()).toBe('run: armed')
  })

  test('STD-ADM-5 a bounce of the starting press is no stop', () => {
    giving.start()
    expect(giving.tryPress('stopped', 149)).toBe('bounce')
    expect(giving.where()).toBe('run: running')
    giving.now -= 149
    expect(giving.tryPress('stopped', 150)).toBeNull()
  })

  test('STD-ADM-5 the key held down repeats itself and still makes one start', () => {
    giving.arm().press('started')
    const repeats = Array.from({ length: 90 }, () => giving.tryPress('started', 33))
    expect(new Set(repeats)).toEqual(new Set(['not_now']))
    expect(giving.view().trials.length).toBe(1)
  })

  test('a stop before the start is refused', () => {
    expect(giving.tryPress('stopped')).toBe('not_now')
    giving.start()
    expect(giving.tryPress('stopped', -10)).toBe('stop_before_start')
  })
})

describe('start and stop belong together', () => {
  test('another input does not stop the clock', () => {
    giving.start()
    giving.input = 'pedal'
    expect(giving.tryPress('stopped', 8000)).toBe('other_input')
    expect(giving.where()).toBe('run: running')
  })

  test('a stop on another clock gives no time: the trial is void as such', () => {
    giving.start()
    giving.clock = 'page-2'
    giving.now = 500
    giving.press('stopped', 8000)
    expect(giving.where()).toBe('run: waiting')
    const [trial] = giving.view().trials
    expect(trial).toMatchObject({ status: 'void', void: { cause: 'clock_changed', valueSeen: false } })
    expect(trial?.readings.time).toBeUndefined()
  })
})

describe('the limit', () => {
  test('is reached by the clock outside and counts as what the file says', () => {
    giving.start()
    const limit = giving.body('limit_reached', { at: giving.now + 60_000, clock: giving.clock })
    expect(giving.take({ ...limit, at: giving.now + 59_999 } as typeof limit)).toBe('limit_not_reached')
    giving.do(limit)
    expect(giving.view().step?.face).toMatchObject({ outcome: 'limit', time: null })
    giving.press('kept', 62_000)
    expect(giving.rows('run')).toEqual(['limit time ≥60'])
  })

  test('holds by the stamps where its tick came late', () => {
    giving.start().press('stopped', 60_400).press('kept')
    expect(giving.rows('run')).toEqual(['limit time ≥60'])
  })
})

describe('a time read from a watch', () => {
  test('is marked as typed', () => {
    giving.do(giving.body('typed', { seconds: 14.2, confirmed: false })).press('kept')
    const [trial] = giving.view().trials
    expect(trial).toMatchObject({
      input: 'typed',
      stamps: [],
      readings: { time: { value: 14.2, typed: true } },
    })
  })

  test('STD-ADM-12 is asked for again only outside the plausible range', () => {
    const typed = (seconds: number, confirmed: boolean) =>
      giving.take(giving.body('typed', { seconds, confirmed }))
    expect(typed(4.9, false)).toBe('out_of_range')
    expect(typed(60.5, true)).toBe('beyond_limit')
    expect(typed(4.9, true)).toBeNull()
    expect(giving.where()).toBe('run: stopped')
    giving.press('kept')
    expect(giving.view().trials[0]?.readings.time).toMatchObject({ value: 4.9, confirmed: true })
  })

  test('text where a number belongs is refused', () => {
    expect(giving.take(giving.body('typed', { seconds: 'twelve', confirmed: false }))).toBe('malformed')
  })
})

test('what a tallied happening adds is summed beside the time', () => {
  giving.start()
  giving.do(giving.body('happened', { happening: 'fell', stamp: giving.stamp() }))
  giving.do(giving.body('happened', { happening: 'fell', stamp: giving.stamp() }))
  expect(giving.view().step?.face).toMatchObject({ added: 10 })
  giving.press('stopped', 9000).press('kept')
  expect(giving.rows('run')).toEqual(['done time 13 added 10'])
  expect(giving.view().trials[0]?.happenings).toEqual(['fell', 'fell'])
})
