import { describe, expect, test } from 'vitest'
import { arms, facts, type Giving, give } from './giving.ts'

const set = (conditions: Readonly<Record<string, string>> = {}) => ({
  object_set: 'twelve_graded',
  ...conditions,
})

const original = (conditions: Readonly<Record<string, string>> = {}): Giving =>
  give('moberg_pickup', { conditions: set(conditions) })

/** The modified form with one hand. */
const modified = (): Giving =>
  give('moberg_pickup', {
    facts: facts(arms('affected', 'absent')),
    conditions: set({ form: 'modified' }),
  })

const picked = (given: Giving, seconds: number, digits = 'as_usual'): Giving =>
  given.run(seconds).answers(digits)

/** Some objects named in so many seconds, the first ones right. */
function named(given: Giving, right: number, wrong: number, seconds: number): Giving {
  for (let n = 0; n < right + wrong; n += 1) given.run(seconds).answers(n < right ? 'right' : 'wrong')
  return given
}

const unnamed = (given: Giving, count: number): Giving => {
  for (let n = 0; n < count; n += 1) given.run(30)
  return given
}

describe('original form', () => {
  test('ordinary: both hands with eyes open, then both with eyes closed, the dominant one first', () => {
    const given = picked(picked(picked(picked(original(), 12), 14), 30), 42, 'left_out')
    expect(given.step()).toBeNull()
    const scores = given.scores()
    expect(scores.value('eyes_open', 'right')).toBe(12)
    expect(scores.value('eyes_open', 'left')).toBe(14)
    expect(scores.value('eyes_closed', 'right')).toBe(30)
    expect(scores.value('eyes_closed', 'left')).toBe(42)
    expect(scores.value('without_sight', 'right')).toBe(2.5)
    expect(scores.value('without_sight', 'left')).toBe(3)
    expect(scores.value('digits_left_out', 'left')).toBe(1)
    expect(scores.value('digits_left_out', 'right')).toBe(0)
    expect(scores.value('pick_up_bound', 'right')).toBeNull()
    const rows = scores.trials.filter(({ step }) => step === 'picked')
    expect(rows.map(({ place }) => `${place.part} ${place.hand}`)).toEqual([
      'open right',
      'open left',
      'closed right',
      'closed left',
    ])
  })

  test('an uninjured hand comes before the dominant one', () => {
    const given = give('moberg_pickup', { facts: facts(arms('affected', 'unaffected')), conditions: set() })
    expect(given.on().step()?.place).toMatchObject({ part: 'open', hand: 'left' })
  })

  test('floor: at the limit there is no time, the objects in the box are kept', () => {
    const given = picked(picked(original(), 12), 14).limited('in_box', 9).answers('left_out')
    const scores = picked(given, 40).scores()
    expect(scores.value('eyes_closed', 'right')).toBeNull()
    expect(scores.why('eyes_closed', 'right')).toBe('limit')
    expect(scores.value('in_box', 'right')).toBe(9)
    expect(scores.value('without_sight', 'right')).toBeNull()
    expect(scores.value('in_box', 'left')).toBeNull()
  })

  test('more than twelve can’t be in the box of a set of twelve', () => {
    const given = picked(picked(original(), 12), 14)
    expect(() => given.limited('in_box', 13)).toThrow('more_than_all')
  })

  test('awkward: no strength to pick up is unable, and no time', () => {
    const given = picked(original(), 12).on().closes('hand', 'unable')
    const scores = picked(given, 30).scores()
    expect(given.step()).toBeNull()
    expect(scores.value('eyes_open', 'left')).toBeNull()
    expect(scores.why('eyes_closed', 'left')).toBe('unable')
    expect(scores.value('without_sight', 'right')).toBe(2.5)
    expect(scores.value('without_sight', 'left')).toBeNull()
  })

  test('awkward: the blindfold slipped; the run is void with its digits, and given again', () => {
    const given = picked(picked(original(), 12), 14).on().begins().voided('cover_slipped')
    const scores = picked(picked(given, 31), 40).scores()
    expect(scores.value('eyes_closed', 'right')).toBe(31)
    expect(scores.trials.filter(({ status }) => status === 'void')).toHaveLength(1)
  })
})

describe('modified form', () => {
  test('ordinary: two runs and their mean, then two passes of twelve', () => {
    const given = modified().run(16).run(14)
    named(given, 12, 0, 2)
    // Nine right in 4 s, one wrong after 4 s, two not named: 3 failures.
    unnamed(named(given, 9, 1, 4), 2)
    expect(given.step()).toBeNull()
    const scores = given.scores()
    expect(scores.each('run_bound', { hand: 'right' })).toEqual({ 1: 16, 2: 14 })
    expect(scores.value('pick_up_bound', 'right')).toBe(15)
    expect(scores.each('recognised', { hand: 'right' })).toEqual({ 1: 12, 2: 9 })
    // (12 x 2 + 9 x 4 + 3 x 30) / 24 = 150 / 24
    expect(scores.value('naming_time', 'right')).toBeCloseTo(6.25, 9)
    expect(scores.value('eyes_open', 'right')).toBeNull()
  })

  test('ceiling: all named at once', () => {
    const scores = named(modified().run(10).run(10), 24, 0, 1).scores()
    expect(scores.each('recognised', { hand: 'right' })).toEqual({ 1: 12, 2: 12 })
    expect(scores.value('naming_time', 'right')).toBe(1)
  })

  test('floor: nothing named is 0 of 12 and 30 s, and not missing', () => {
    const scores = unnamed(modified().run(60).run(50), 24).scores()
    expect(scores.each('recognised', { hand: 'right' })).toEqual({ 1: 0, 2: 0 })
    expect(scores.value('naming_time', 'right')).toBe(30)
  })

  test('awkward: one object refused leaves the pass and the mean without a value', () => {
    const given = named(modified().run(10).run(10), 12, 0, 3).on().closes('trial', 'refused')
    const scores = named(given, 11, 0, 3).scores()
    expect(scores.each('recognised', { hand: 'right' })).toEqual({ 1: 12, 2: null })
    expect(scores.value('naming_time', 'right')).toBeNull()
  })

  test('awkward: a first run at the limit leaves no mean of two', () => {
    const scores = named(modified().limited('in_box_bound', 7).run(40), 24, 0, 2).scores()
    expect(scores.value('pick_up_bound', 'right')).toBeNull()
    expect(scores.each('run_bound', { hand: 'right' })).toEqual({ 1: null, 2: 40 })
    expect(scores.value('in_box_bound', 'right')).toBe(7)
  })
})
