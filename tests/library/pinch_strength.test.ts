import { describe, expect, test } from 'vitest'
import { arms, facts, type Giving, give } from './giving.ts'
import type { Occasion } from './log-book.ts'

const PATTERNS = ['tip', 'key', 'palmar'] as const

/** Both hands give their gentle pinch, and show the pinch asked for unless said otherwise. */
function gentle(given: Giving, ...seen: readonly ('as_shown' | 'other')[]): Giving {
  for (const hand of [0, 1]) given.reads(2).answers(seen[hand] ?? 'as_shown')
  return given
}

/** Hands in turn, three times. */
const pinches = (given: Giving, readings: readonly number[]): Giving =>
  readings.reduce((so, value) => so.reads(value), given)

/** A whole kind of pinch. */
const kind = (given: Giving, readings: readonly number[]): Giving => pinches(gentle(given), readings)

const ALIKE = [5, 4, 5, 4, 5, 4] as const
const SCALE = { full_scale: 'lbf_60', gauge_build: 'hydraulic' } as const
const begin = (occasion: Occasion = {}): Giving =>
  give('pinch_strength', { ...occasion, conditions: { ...SCALE, ...occasion.conditions } })

const mean = (given: Giving, hand: string): Readonly<Record<string, number | null>> =>
  given.scores().each('mean_of_3', { hand })

test('ordinary: tip, key, palmar, the hands in turn; a mean of three for each', () => {
  const given = kind(begin(), [6, 5.5, 6.4, 5.6, 6.2, 5.7])
  kind(given, [9, 8.5, 9.3, 8.9, 9.9, 9])
  kind(given, [8.1, 7, 8.2, 7.1, 8.3, 7.2])
  expect(given.step()).toBeNull()
  // By hand: (6 + 6.4 + 6.2) / 3 = 6.2; (9 + 9.3 + 9.9) / 3 = 9.4; (8.1 + 8.2 + 8.3) / 3 = 8.2.
  expect(mean(given, 'right')).toEqual({
    tip: expect.closeTo(6.2, 12),
    key: expect.closeTo(9.4, 12),
    palmar: expect.closeTo(8.2, 12),
  })
  // (5.5 + 5.6 + 5.7) / 3 = 5.6; (8.5 + 8.9 + 9) / 3 = 8.8; (7 + 7.1 + 7.2) / 3 = 7.1.
  expect(mean(given, 'left')).toEqual({
    tip: expect.closeTo(5.6, 12),
    key: expect.closeTo(8.8, 12),
    palmar: expect.closeTo(7.1, 12),
  })
  const rows = given.scores().trials.filter(({ step }) => step === 'pinch')
  expect(rows.map(({ place }) => place.pattern)).toEqual(PATTERNS.flatMap((each) => Array(6).fill(each)))
  expect(rows.slice(0, 4).map(({ place }) => place.hand)).toEqual(['right', 'left', 'right', 'left'])
})

test('15 s lie between two pinches of a hand, and a minute between two kinds, none after the last', () => {
  const given = begin()
  kind(kind(kind(given, ALIKE), ALIKE), ALIKE)
  const kept = (least: number) => given.rests.filter((rest) => rest === least).length
  expect(kept(15)).toBe(12)
  expect(kept(60)).toBe(2)
})

describe('ceiling', () => {
  test('a reading at the end of a scale of 30 lbf: no mean and no table, but the least it can be', () => {
    const given = begin({ conditions: { full_scale: 'lbf_30' } })
    kind(given, [13.6, 12, 13, 12.5, 12.1, 13])
    expect(given.noted()).toEqual(['at_the_end'])
    expect(mean(given, 'right').tip).toBeNull()
    expect(given.scores().each('at_least', { hand: 'right' }).tip).toBeCloseTo(12.9, 12)
    expect(given.scores().each('at_end_of_scale', { hand: 'right' }).tip).toBe(1)
    expect(mean(given, 'left').tip).toBeCloseTo(12.5, 12)
    expect(given.scores().each('at_least', { hand: 'left' }).tip).toBeNull()
  })

  test('the same reading on a scale of 60 lbf is a reading like any other', () => {
    const given = kind(begin(), [13.6, 12, 13, 12.5, 12.1, 13])
    expect(mean(given, 'right').tip).toBeCloseTo(12.9, 12)
  })

  test('a gauge whose scale isn’t told: means as ever, and from 13.6 kgf on at least that', () => {
    const given = kind(give('pinch_strength'), [13.6, 12, 13, 12.5, 12.1, 13])
    expect(given.noted()).toEqual(['at_the_end'])
    expect(mean(given, 'right').tip).toBeNull()
    expect(given.scores().each('at_least', { hand: 'right' }).tip).toBeCloseTo(12.9, 12)
    expect(mean(given, 'left').tip).toBeCloseTo(12.5, 12)
  })

  test('pounds typed as kilograms are asked again', () => {
    expect(() => gentle(begin()).reads(18)).toThrow('out_of_range')
  })
})

describe('floor', () => {
  test('too weak to move the needle, three times: 0 kgf in this kind, and the next kind is asked for', () => {
    const given = gentle(begin({ facts: facts(arms('unaffected', 'affected')) }))
    for (const value of [5, 6, 7]) given.reads(value).on().closes('trial', 'unable')
    expect(given.step()?.place).toMatchObject({ pattern: 'key' })
    expect(mean(given, 'left').tip).toBe(0)
    expect(mean(given, 'right').tip).toBe(6)
  })
})

describe('awkward', () => {
  test('a hand that has only another pattern is not asked for this kind, and has no number', () => {
    const given = gentle(begin(), 'as_shown', 'other')
    pinches(given, [5, 6, 7])
    expect(given.step()?.place).toMatchObject({ pattern: 'key', warming: 'right' })
    const scores = given.scores()
    expect(scores.each('mean_of_3', { hand: 'right' }).tip).toBe(6)
    expect(scores.each('mean_of_3', { hand: 'left' }).tip).toBeNull()
    expect(given.noted()).toContain('other_pattern')
    const left = scores.trials.filter(({ step, place }) => step === 'pinch' && place.hand === 'left')
    expect(left.map(({ outcome }) => outcome)).toEqual(['not_given', 'not_given', 'not_given'])
  })

  test('the same hand is asked for the next kind', () => {
    const given = pinches(gentle(begin(), 'as_shown', 'other'), [5, 6, 7])
    kind(given, ALIKE)
    expect(mean(given, 'left')).toMatchObject({ tip: null, key: 4 })
  })

  test('refused after one pinch: no mean, the one given is labelled as what it is', () => {
    const given = pinches(gentle(begin()), [5, 4, 6])
    given.on().closes('trial', 'refused').reads(7).on().closes('trial', 'refused')
    const scores = given.scores()
    expect(mean(given, 'left').tip).toBeNull()
    expect(scores.each('highest_of_fewer', { hand: 'left' }).tip).toBe(4)
    expect(mean(given, 'right').tip).toBe(6)
  })

  test('a void pinch is given again; a hand gets two extra in each kind', () => {
    const given = gentle(begin()).on()
    given.voided('other_finger').voided('jerked')
    pinches(given, ALIKE)
    expect(mean(given, 'right').tip).toBe(5)
    gentle(given).on().voided('collapsed')
    pinches(given, ALIKE)
    expect(mean(given, 'right').key).toBe(5)
  })

  test('a hand that is not allowed is closed for all three kinds', () => {
    const given = begin({ facts: facts(arms('unaffected', 'affected')) }).on()
    given.reads(2).answers('as_shown').on().closes('warming', 'not_allowed')
    pinches(given, [5, 6, 7])
    pinches(given.reads(2).answers('as_shown'), [5, 6, 7])
    pinches(given.reads(2).answers('as_shown'), [5, 6, 7])
    expect(given.step()).toBeNull()
    expect(mean(given, 'right')).toEqual({ tip: 6, key: 6, palmar: 6 })
    expect(mean(given, 'left')).toEqual({ tip: null, key: null, palmar: null })
  })
})
