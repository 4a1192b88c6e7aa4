import { describe, expect, test } from 'vitest'
import { compareValue } from '../../protocols/scoring/compare.ts'
import { readProtocol } from '../../protocols/language/read.ts'
import { folderOf } from './folders.ts'
import { arms, facts, type Giving, give } from './giving.ts'
import type { Occasion } from './log-book.ts'

const TASKS = [
  'writing',
  'card_turning',
  'small_objects',
  'simulated_feeding',
  'checkers',
  'large_light',
  'large_heavy',
]

const begin = (occasion: Occasion = {}): Giving =>
  give('jebsen_taylor', { ...occasion, conditions: { template: 'not_used', ...occasion.conditions } })

/** One hand alone, so that seven runs make a whole test. */
const alone = (conditions: Readonly<Record<string, string>> = {}): Giving =>
  begin({ facts: facts(arms('affected', 'absent')), conditions })

const runs = (given: Giving, ...times: readonly number[]): Giving =>
  times.reduce((so, seconds) => so.run(seconds), given)

describe('ordinary', () => {
  // Other hand, then dominant, task by task; the sums below were added up on paper.
  const OTHER = [32.3, 4.5, 6.2, 7.9, 3.8, 3.2, 3.1]
  const DOMINANT = [12.2, 4, 5.9, 6.4, 3.3, 3, 3]
  const both = OTHER.flatMap((seconds, task) => [seconds, DOMINANT[task] ?? 0])

  test('seven tasks in their order, each with the other hand first; a time for each and a total', () => {
    const given = runs(begin(), ...both)
    expect(given.step()).toBeNull()
    const scores = given.scores()
    expect(scores.value('total', 'left')).toBeCloseTo(61, 9)
    expect(scores.value('total', 'right')).toBeCloseTo(37.8, 9)
    expect(scores.value('without_writing', 'left')).toBeCloseTo(28.7, 9)
    expect(scores.value('without_writing', 'right')).toBeCloseTo(25.6, 9)
    expect(scores.each('time', { hand: 'right' })).toMatchObject({ writing: 12.2, simulated_feeding: 6.4 })
    expect(scores.trials.map(({ place }) => `${place.subtest} ${place.hand}`)).toEqual(
      TASKS.flatMap((task) => [`${task} left`, `${task} right`]),
    )
    expect(scores.order).toEqual({ items: ['left', 'right'], rule: 'nondominant-first' })
  })

  test('a left-hander begins with the right hand', () => {
    const given = begin({ facts: facts({ dominantBefore: 'left' }) }).on()
    expect(given.step()?.place).toMatchObject({ subtest: 'writing', hand: 'right' })
  })
})

describe('ceiling', () => {
  test('the quickest hand: three seconds a task are three seconds, without a floor of their own', () => {
    const scores = runs(alone(), 8, 2.5, 4, 5, 2, 2.2, 2.3).scores()
    expect(scores.value('total', 'right')).toBeCloseTo(26, 9)
    expect(scores.value('capped', 'right')).toBe(0)
    expect(scores.value('total_with_capped', 'right')).toBeNull()
  })
})

describe('floor', () => {
  test('a task that can’t be done has no time and no zero; there is no total', () => {
    const given = runs(alone(), 30, 9, 14).on().closes('trial', 'unable')
    const scores = runs(given, 6, 5, 5).scores()
    expect(given.step()).toBeNull()
    expect(scores.each('time', { hand: 'right' })).toMatchObject({ simulated_feeding: null, checkers: 6 })
    expect(scores.value('total', 'right')).toBeNull()
    expect(scores.why('total', 'right')).toBe('unable')
    expect(scores.value('without_writing', 'right')).toBeNull()
  })

  test('with a cap of 45 s a task ends there: no total, and a sum at least, which says so', () => {
    const scores = runs(alone({ cap: 's45' }), 60, 9, 45, 10, 6, 5, 5).scores()
    expect(scores.each('time', { hand: 'right' })).toMatchObject({ writing: null, small_objects: null })
    expect(scores.value('capped', 'right')).toBe(2)
    expect(scores.value('total', 'right')).toBeNull()
    expect(scores.why('total', 'right')).toBe('limit')
    // 45 + 9 + 45 + 10 + 6 + 5 + 5
    expect(scores.value('total_with_capped', 'right')).toBeCloseTo(125, 9)
  })

  test.each([
    ['s120', 120],
    ['s180', 180],
  ])('a cap of %s', (cap, seconds) => {
    const scores = runs(alone({ cap }), 500, 9, 9, 9, 9, 9, 9).scores()
    expect(scores.value('total_with_capped', 'right')).toBeCloseTo(seconds + 54, 9)
  })

  test('without a cap a task may take as long as it takes', () => {
    expect(runs(alone(), 500, 9, 9, 9, 9, 9, 9).scores().value('total', 'right')).toBeCloseTo(554, 9)
  })
})

describe('awkward', () => {
  test('writing is no fair test: not given, with a reason; the sum of the other six stands', () => {
    const given = alone().on().closes('trial', 'not_given')
    const scores = runs(given, 5, 6, 7, 4, 3, 3.5).scores()
    expect(scores.value('total', 'right')).toBeNull()
    expect(scores.value('without_writing', 'right')).toBeCloseTo(28.5, 9)
  })

  test('a drop is counted and the time stands; a void task is given again once', () => {
    const given = runs(alone(), 12, 4).on().begins().happens('dropped').happens('supplied').stops(9)
    given.on().begins().voided('slid').run(7)
    const scores = runs(given, 4, 3, 3).scores()
    expect(scores.each('time', { hand: 'right' })).toMatchObject({ small_objects: 9, simulated_feeding: 7 })
    expect(scores.value('drops', 'right')).toBe(2)
    expect(scores.value('total', 'right')).toBeCloseTo(42, 9)
  })

  test('lifting isn’t cleared: the heavy cans are not allowed, the test ends without a total', () => {
    const given = runs(alone(), 12, 4, 5, 6, 4, 3).on().closes('trial', 'not_allowed')
    expect(given.step()).toBeNull()
    expect(given.scores().why('total', 'right')).toBe('not_allowed')
  })

  test('pain ends one task, and the next one follows', () => {
    const given = runs(alone(), 12).on().begins().happens('pain').settles('trial', 6)
    expect(given.step()?.place).toMatchObject({ subtest: 'small_objects' })
  })
})

/** The first table of a score, for a right-hander's right hand. */
const compared = (score: string, value: number, age: number, sex: 'F' | 'M', subtest: string) => {
  const { protocol } = readProtocol(folderOf('jebsen_taylor'))
  if (!protocol) throw new Error('can’t be read')
  const found = compareValue({
    protocol,
    score,
    value,
    age: { from: age, to: age },
    sex,
    hand: 'right',
    dominant: 'right',
    affected: null,
    told: subtest === '' ? {} : { subtest },
  })
  if ('problem' in found) throw new Error(found.problem)
  return found.norms[0]
}

describe('tables', () => {
  test('a row by task, and dominance, not side', () => {
    expect(compared('time', 12.2, 30, 'M', 'writing')?.strata).toMatchObject([{ hand: 'dominant', z: 0 }])
    expect(compared('time', 5, 40, 'F', 'card_turning')?.strata[0]?.z).toBeCloseTo(0.5, 9)
  })

  test('the cell that is left out has no row, the SD that is left out no z', () => {
    expect(compared('time', 15, 70, 'F', 'writing')).toMatchObject({ status: 'out_of_range', strata: [] })
    expect(compared('time', 4, 70, 'F', 'checkers')).toMatchObject({ status: 'no_spread' })
  })

  test('over 94 and under 20 there is no row', () => {
    for (const age of [19, 95]) expect(compared('time', 4, age, 'M', 'checkers')?.status).toBe('out_of_range')
  })

  const AT_OR_ABOVE = 'At or above the cut-off for an injured hand'

  test('the cut-off of the total: 37.08 s belongs to the injured', () => {
    expect(compared('total', 37.07, 30, 'M', '')?.strata).toMatchObject([{ figures: { side: 'below' } }])
    expect(compared('total', 37.08, 30, 'M', '')?.strata).toMatchObject([
      { figures: { side: 'above', band: AT_OR_ABOVE } },
    ])
  })
})
