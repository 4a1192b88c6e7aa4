import { beforeEach, describe, expect, test } from 'vitest'
import { Giving, madeProtocol } from '../runner/giving.ts'
import { resumed, scoreOf } from './resumed.ts'

const PROTOCOL = madeProtocol(
  `
  - repeat: run
    times: 2
    steps:
      - timed: turn
        start: { said: go }
        stop: { seen: last peg in }
        limit: 300 s
        voids: 1
        counts-as: over 300 s
        reached: { pegs: { of: 16, text: Pegs in place }, rounds: { of: { from: "run == 1 ? 4 : 5" } } }
        splits: { half: The eighth peg is in., corner: The corner is turned. }
`,
  `
scores:
  - { score: pegs, title: Pegs, value: max(given(turn.pegs)), unit: "{count}", better: higher, decimals: 0 }
  - { score: half, title: Half, value: min(given(turn.half)), unit: s, better: lower, decimals: 1 }
`,
)

let giving: Giving
beforeEach(() => {
  giving = new Giving(PROTOCOL).begin()
})

const tell = (what: string, count: unknown) => giving.take(giving.body('reached', { what, count }))
const toLimit = () => {
  giving.start()
  giving.now += 300_000
  return giving.do(giving.body('limit_reached', { at: giving.now, clock: giving.clock }))
}
const split = (what: string, after: number) =>
  giving.take(giving.body('split', { what, stamp: giving.stamp(after) }))

describe('how far it went', () => {
  test('is asked at the limit, before the trial can be kept', () => {
    toLimit()
    expect(giving.where()).toBe('turn at 1: asked')
    expect(giving.tryPress('kept')).toBe('not_now')
    expect(giving.view().step?.face).toMatchObject({
      reached: [
        { name: 'pegs', text: 'Pegs in place', most: 16, count: null },
        { name: 'rounds', text: null, most: 4, count: null },
      ],
    })
    expect(tell('pegs', 9)).toBeNull()
    expect(giving.where()).toBe('turn at 1: asked')
    expect(tell('rounds', 2)).toBeNull()
    expect(giving.where()).toBe('turn at 1: stopped')
    giving.press('kept')
    expect(giving.rows('turn')).toEqual(['1 limit time ≥300 pegs 9 rounds 2'])
    expect(scoreOf(giving, 'pegs')).toBe(9)
  })

  test('is asked too where the stop or a typed time lies at the limit', () => {
    giving.start().press('stopped', 300_000)
    expect(giving.where()).toBe('turn at 1: asked')
    giving.do({ kind: 'undone' }).do({ kind: 'undone' }).do({ kind: 'undone' })
    giving.do(giving.body('typed', { seconds: 300, confirmed: false }))
    expect(giving.where()).toBe('turn at 1: asked')
  })

  test('is not asked where the trial was finished: the column is empty', () => {
    giving.time(40)
    expect(giving.rows('turn')).toEqual(['1 done time 40'])
    expect(scoreOf(giving, 'pegs')).toBeNull()
  })

  test('is a whole number, and no more than there are', () => {
    toLimit()
    expect(tell('pegs', 17)).toBe('more_than_all')
    expect(tell('pegs', 2.5)).toBe('malformed')
    expect(tell('pegs', -1)).toBe('malformed')
    expect(tell('rings', 2)).toBe('no_such_column')
    expect(tell('rounds', 5)).toBe('more_than_all')
    expect(tell('pegs', 16)).toBeNull()
  })

  test('undo takes back what was told', () => {
    toLimit()
    tell('pegs', 9)
    giving.do({ kind: 'undone' })
    expect(giving.view().step?.face).toMatchObject({ reached: [{ count: null }, { count: null }] })
    expect(giving.where()).toBe('turn at 1: asked')
  })

  test('waits through a restart, for the trial is over', () => {
    toLimit()
    tell('pegs', 9)
    const again = resumed(giving)
    expect(again.where()).toBe('turn at 1: asked')
    again.do(again.body('reached', { what: 'rounds', count: 1 })).press('kept')
    expect(again.rows('turn')).toEqual(['1 limit time ≥300 pegs 9 rounds 1'])
  })

  test('goes with a trial that is void, and a closed one has none', () => {
    toLimit()
    tell('pegs', 9)
    giving.press('voided')
    expect(giving.where()).toBe('turn at 1: waiting')
    giving.do({ kind: 'closed', what: 'trial', place: { run: 1 }, outcome: 'unable', reason: '' })
    expect(giving.rows('turn')).toEqual(['1 unable'])
  })

  test('can be put right afterwards, unlike the time that the limit counts as', () => {
    toLimit()
    tell('pegs', 9)
    tell('rounds', 2)
    giving.press('kept')
    const trial = giving.view().trials[0]?.id ?? ''
    const correct = (column: string, value: number) =>
      giving.take({ kind: 'corrected', trial, column, value, reason: 'Counted again.' })
    expect(correct('pegs', 17)).toBe('more_than_all')
    expect(correct('pegs', 2.5)).toBe('not_whole')
    expect(correct('time', 299)).toBe('not_correctable')
    expect(correct('pegs', 10)).toBeNull()
    expect(giving.rows('turn')).toEqual(['1 limit time ≥300 pegs 10 rounds 2'])
  })
})

describe('moments on the way', () => {
  test('are seconds from the start, and the clock runs on', () => {
    giving.start()
    expect(split('half', 20_500)).toBeNull()
    expect(giving.where()).toBe('turn at 1: running')
    expect(split('corner', 4500)).toBeNull()
    giving.press('stopped', 15_000).press('kept', 1500)
    expect(giving.rows('turn')).toEqual(['1 done half 20.5 corner 25 time 40'])
    const { stamps = [] } = giving.view().trials[0] ?? {}
    expect(stamps.map((at) => at - (stamps[0] ?? 0))).toEqual([0, 20_500, 25_000, 40_000])
    expect(scoreOf(giving, 'half')).toBe(20.5)
  })

  test('stay with a trial that then comes to its limit', () => {
    giving.start()
    split('half', 55_000)
    giving.now += 245_000
    giving.do(giving.body('limit_reached', { at: giving.now, clock: giving.clock }))
    tell('pegs', 12)
    tell('rounds', 0)
    giving.press('kept')
    expect(giving.rows('turn')).toEqual(['1 limit half 55 time ≥300 pegs 12 rounds 0'])
  })

  test('are stamped once each, after the start, on its clock', () => {
    giving.start()
    expect(split('middle', 10)).toBe('no_such_split')
    expect(split('half', 20_000)).toBeNull()
    expect(split('half', 10)).toBe('split_again')
    giving.now -= 30_000
    expect(split('corner', 10)).toBe('out_of_order')
    giving.clock = 'page-2'
    expect(split('corner', 40_000)).toBe('other_clock')
  })

  test('can’t lie after the stop', () => {
    giving.start()
    split('half', 20_000)
    giving.now -= 5000
    expect(giving.tryPress('stopped', 1000)).toBe('out_of_order')
  })

  test('undo takes one back, a void takes them with the trial', () => {
    giving.start()
    split('half', 20_000)
    giving.do({ kind: 'undone' })
    expect(giving.view().step?.face).toMatchObject({ splits: [{ name: 'half', seconds: null }, {}] })
    split('half', 2000)
    giving.press('voided')
    giving.now += 2000
    giving.time(40)
    expect(giving.rows('turn')).toEqual(['1 done time 40'])
  })

  test('a moment that was not stamped is no value', () => {
    giving.time(40)
    expect(scoreOf(giving, 'half')).toBeNull()
  })
})
