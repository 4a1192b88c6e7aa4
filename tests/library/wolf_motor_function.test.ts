import { describe, expect, test } from 'vitest'
import { arms, facts, type Giving, give } from './giving.ts'

/** One arm alone, so that seventeen items make a whole test. */
const alone = (conditions: Readonly<Record<string, string>> = {}): Giving =>
  give('wolf_motor_function', {
    facts: facts(arms('affected', 'absent')),
    conditions: { phase: 'chronic', ...conditions },
  })

type Item = (given: Giving) => Giving

/** An item done in so many seconds, or not within the limit, with its grade. */
const item =
  (seconds: number, grade: number): Item =>
  (given) =>
    given.run(seconds).grades(grade)

/** An item that was tried and can't be done, with how far the arm took part. */
const unable =
  (grade: number): Item =>
  (given) =>
    given.on().closes('trial', 'unable').grades(grade)

interface Strength {
  /** Answers on the ladder of weights. */
  readonly placed?: readonly ('yes' | 'no')[]
  readonly squeezes?: readonly number[]
}

/** All seventeen items: weights come after the sixth timed one, the grip after the twelfth. */
function whole(given: Giving, items: readonly Item[], strength: Strength = {}): Giving {
  const { placed = ['yes', 'no'], squeezes = [20, 22, 24] } = strength
  for (const [index, each] of items.entries()) {
    if (index === 6) for (const answer of placed) given.answers(answer)
    if (index === 12) for (const value of squeezes) given.reads(value)
    each(given)
  }
  return given
}

const alike = (count: number, each: Item): readonly Item[] => Array<Item>(count).fill(each)

const TIMES = [3, 1, 2, 5, 4, 30, 2.5, 6, 7, 8, 9, 10, 3.5, 20, 15]
const GRADES = [4, 4, 4, 3, 3, 2, 4, 3, 3, 3, 3, 3, 4, 2, 3]
const ITEMS = TIMES.map((seconds, index) => item(seconds, GRADES[index] ?? 0))

describe('ordinary', () => {
  test('fifteen times, fifteen grades, a weight and a grip, worked out on paper', () => {
    const given = whole(alone(), ITEMS, { placed: ['yes', 'yes', 'no'] })
    expect(given.step()).toBeNull()
    const scores = given.scores()
    // In order 1 2 2.5 3 3.5 4 5 [6] 7 8 9 10 15 20 30, 126 in all; grades 48 in all.
    expect(scores.value('median_time', 'right')).toBe(6)
    expect(scores.value('mean_time', 'right')).toBeCloseTo(8.4, 9)
    expect(scores.value('ability_sum', 'right')).toBe(48)
    expect(scores.value('ability_mean', 'right')).toBeCloseTo(3.2, 9)
    expect(scores.value('over_limit', 'right')).toBe(0)
    // 3 and 4 lb placed, 5 lb not: 4 x 0.45359237 kg.
    expect(scores.value('weight_placed', 'right')).toBeCloseTo(1.81436948, 9)
    expect(scores.value('grip_mean', 'right')).toBeCloseTo(22, 9)
    expect(scores.value('median_time', 'left')).toBeNull()
    // Side on, facing, close, facing again, standing.
    const rows = scores.trials.filter(({ step, place }) => step === 'did' && place.hand === 'right')
    expect(rows.map(({ place }) => place.task)).toEqual([
      'forearm_table',
      'forearm_box',
      'elbow_out',
      'elbow_weight',
      'hand_table',
      'hand_box',
      'retrieve',
      'can',
      'pencil',
      'clip',
      'checkers',
      'cards',
      'key',
      'towel',
      'basket',
    ])
  })

  test('the less affected arm comes first', () => {
    const given = give('wolf_motor_function', {
      facts: facts(arms('affected', 'unaffected')),
      conditions: { phase: 'chronic' },
    })
    expect(given.on().step()?.place).toMatchObject({ hand: 'left', chair: 'side_on', task: 'forearm_table' })
  })
})

test('ceiling: everything at once and normal', () => {
  const scores = whole(alone(), alike(15, item(0.8, 5)), { placed: Array<'yes'>(18).fill('yes') }).scores()
  expect(scores.value('median_time', 'right')).toBeCloseTo(0.8, 9)
  expect(scores.value('ability_sum', 'right')).toBe(75)
  expect(scores.value('ability_mean', 'right')).toBe(5)
  // 20 lb, the last weight, is placed.
  expect(scores.value('weight_placed', 'right')).toBeCloseTo(9.0718474, 9)
})

describe('floor', () => {
  test('nothing within the limit: the median is the value that the clinic has set, here 120 s', () => {
    const scores = whole(alone({ fill: '120 s' }), alike(15, item(120, 1))).scores()
    expect(scores.value('median_time', 'right')).toBe(120)
    expect(scores.value('mean_time', 'right')).toBe(120)
    expect(scores.value('over_limit', 'right')).toBe(15)
    expect(scores.value('ability_sum', 'right')).toBe(15)
  })

  test('all tried and unable: graded still, and no weight placed is no value', () => {
    const given = whole(alone(), alike(15, unable(0)), { placed: ['no', 'no', 'no', 'no'] })
    const scores = given.scores()
    expect(given.step()).toBeNull()
    expect(scores.value('median_time', 'right')).toBe(121)
    expect(scores.value('ability_sum', 'right')).toBe(0)
    expect(scores.value('ability_mean', 'right')).toBe(0)
    expect(scores.value('weight_placed', 'right')).toBeNull()
    expect(scores.why('weight_placed', 'right')).toBe('limit')
  })
})

const withoutBasket = (given: Giving): Giving =>
  whole(given, ITEMS.slice(0, 14)).on().closes('trial', 'not_allowed')

/** The first item runs, and a second try is begun. */
const tried = (): Giving => alone().on().begins().happens('further_try')

describe('graded from video', () => {
  test('the times stand, the grades come another day, also of what couldn’t be done', () => {
    const later: readonly Item[] = [
      (given) => given.run(3).putsOff('rater_1'),
      ...alike(3, (given) => given.on().closes('trial', 'unable')),
      ...TIMES.slice(4).map(
        (seconds): Item =>
          (given) =>
            given.run(seconds),
      ),
    ]
    const given = whole(alone({ graded_from: 'video' }), later)
    expect(given.step()).toBeNull()
    expect(given.scores().value('median_time', 'right')).toBe(9)
    expect(given.scores().why('ability_mean', 'right')).toBe('pending')
    given.ratesLater('rater_1')
    const grades = [4, 1, 1, 1, 3, 2, 4, 3, 3, 3, 3, 3, 4, 2, 3]
    for (const grade of grades) given.grades(grade)
    expect(given.scores().value('ability_sum', 'right')).toBe(40)
    expect(given.scores().value('median_time', 'right')).toBe(9)
  })
})

describe('awkward', () => {
  test('four unable, three over the limit: the median is the eighth value, both kinds of grades are summed', () => {
    const done = Array.from({ length: 8 }, (_, index) => item(index + 1, 3))
    const scores = whole(alone(), [...alike(4, unable(1)), ...alike(3, item(120, 2)), ...done]).scores()
    expect(scores.value('over_limit', 'right')).toBe(7)
    expect(scores.value('median_time', 'right')).toBe(8)
    expect(scores.value('ability_sum', 'right')).toBe(34)
  })

  test('standing isn’t allowed: nothing is filled in, so there is neither median nor mean of grades', () => {
    const scores = withoutBasket(alone()).scores()
    expect(scores.value('median_time', 'right')).toBeNull()
    expect(scores.why('median_time', 'right')).toBe('not_allowed')
    expect(scores.why('ability_mean', 'right')).toBe('not_allowed')
    expect(scores.value('weight_placed', 'right')).toBeCloseTo(3 * 0.45359237, 9)
  })

  test('with one missing allowed by the clinic: the median of the other fourteen', () => {
    const scores = withoutBasket(alone({ most_missing: '1' })).scores()
    // 1 2 2.5 3 3.5 4 [5 6] 7 8 9 10 20 30
    expect(scores.value('median_time', 'right')).toBe(5.5)
    expect(scores.value('ability_mean', 'right')).toBeNull()
  })

  test('more missing than allowed: no median', () => {
    const given = alone({ most_missing: '2' }).run(4).grades(4).closes('hand', 'refused')
    expect(given.step()).toBeNull()
    expect(given.scores().value('median_time', 'right')).toBeNull()
  })

  test('the other arm, a third try, or the limit hold the grade at 2', () => {
    expect(() => alone().on().begins().happens('other_arm').stops(10).grades(3)).toThrow('above_highest')
    expect(() => tried().happens('further_try').stops(10).grades(3)).toThrow('above_highest')
    expect(() => tried().stops(10).grades(3)).not.toThrow()
    expect(() => alone().run(120).grades(3)).toThrow('above_highest')
  })

  test('a touched arm: the item is void with its grade, and given again once', () => {
    const given = alone().on().begins().voided('touched')
    // 3 lb not placed, 2 lb placed: down the ladder.
    const scores = whole(given, ITEMS, { placed: ['no', 'yes'] }).scores()
    expect(scores.value('weight_placed', 'right')).toBeCloseTo(0.90718474, 9)
    expect(scores.value('median_time', 'right')).toBe(6)
    expect(scores.trials.filter(({ status }) => status === 'void')).toHaveLength(1)
  })
})
