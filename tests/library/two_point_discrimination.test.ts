import { describe, expect, test } from 'vitest'
import { arms, facts, type Giving, give } from './giving.ts'

/** One hand and the static points alone, unless said otherwise. */
const begin = (conditions: Readonly<Record<string, string>> = {}): Giving =>
  give('two_point_discrimination', {
    facts: facts(arms('affected', 'absent')),
    conditions: { ways: 'static', accept: '7', ...conditions },
  })

const touchOf = (given: Giving): unknown => {
  const place = given.on().step()?.place
  return place?.touch ?? place?.touch_moving
}

/** Ten touches of a gap of which so many are told right: the others are two points called one. */
function gap(given: Giving, right: number): Giving {
  let wrong = 10 - right
  for (let touch = 0; touch < 10; touch += 1) {
    const drawn = touchOf(given)
    const missed = drawn === 'two' && wrong > 0
    if (missed) wrong -= 1
    given.answers(missed ? 'one' : String(drawn))
  }
  return given
}

const gaps = (given: Giving, ...rights: readonly number[]): Giving =>
  rights.reduce((so, right) => gap(so, right), given)

/** The tip of a finger answers everything with these words. */
function answered(given: Giving, one: string, two: string): Giving {
  for (let touch = 0; touch < 10; touch += 1) given.answers(touchOf(given) === 'one' ? one : two)
  return given
}

const found = (given: Giving, score = 'static_gap') => given.scores().each(score, { hand: 'right' })

describe('static points, from 5 mm', () => {
  test('down while accepted: 5 and 4 told, 3 not; 4 mm is found', () => {
    const given = begin().on()
    expect(given.step()?.place).toMatchObject({ site: 'thumb', spacing: 'g5' })
    gaps(given, 10, 8, 6)
    expect(given.step()?.place).toMatchObject({ site: 'index', spacing: 'g5' })
    expect(found(given)).toMatchObject({ thumb: 4 })
  })

  test('up while it fails: 5 and 6 not told, 7 is; 7 mm is found', () => {
    const given = gaps(begin(), 5, 6, 7)
    expect(given.step()?.place).toMatchObject({ site: 'index' })
    expect(found(given)).toMatchObject({ thumb: 7 })
  })

  test('all told down to the finest: 2 mm', () => {
    expect(found(gaps(begin(), 10, 10, 10, 10))).toMatchObject({ thumb: 2 })
  })

  test('not even 15 mm: at least 15, which is a bound', () => {
    const given = gaps(begin(), 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5)
    expect(given.step()?.place).toMatchObject({ site: 'index' })
    expect(given.scores().over('static_gap', { hand: 'right', site: 'thumb' })).toBe(true)
    expect(found(given)).toMatchObject({ thumb: 15 })
  })

  test('7 of 10 accepts, 6 doesn’t; where the clinic asks 8, 7 doesn’t either', () => {
    expect(gap(begin(), 7).step()?.place).toMatchObject({ spacing: 'g4' })
    expect(gap(begin(), 6).step()?.place).toMatchObject({ spacing: 'g6' })
    expect(gap(begin({ accept: '8' }), 7).step()?.place).toMatchObject({ spacing: 'g6' })
  })

  test('both counts are kept: all ten, and the twos alone', () => {
    const given = gaps(begin(), 8, 5)
    const scores = given.scores()
    const thumb = { hand: 'right', site: 'thumb' }
    expect(scores.each('right', thumb)).toMatchObject({ g5: 8, g4: 5 })
    expect(scores.each('right_twos', thumb)).toMatchObject({ g5: 3, g4: 0 })
  })
})

describe('the touches of a gap', () => {
  test('are five ones and five twos with no more than three alike in a row, drawn before the first', () => {
    const drawn = gap(begin(), 10)
      .scores()
      .log.flatMap(({ body }) =>
        body.kind === 'ordered' && 'rule' in body && body.rule === 'drawn' ? [body.items] : [],
      )
    const [first] = drawn as readonly (readonly string[])[]
    expect(first?.filter((touch) => touch === 'one')).toHaveLength(5)
    expect(first).toHaveLength(10)
    expect(first?.join(' ')).not.toMatch(/(one ){4}|(two ){4}/)
  })

  test('a void touch is given again and leaves the sequence as it is', () => {
    const given = begin().on()
    const before = given.step()?.place
    given.voided('not_together')
    expect(given.step()?.place).toEqual(before)
  })
})

describe('what is no number', () => {
  test('one point isn’t felt at all: no touch, no value', () => {
    const given = answered(begin(), 'nothing', 'nothing')
    expect(given.step()?.place).toMatchObject({ site: 'index' })
    expect(given.noted()).toEqual(['no_touch'])
    expect(found(given)).toMatchObject({ thumb: null })
  })

  test('most single points called two: asked, and left without a value or gone on with', () => {
    const asked = answered(begin(), 'two', 'two')
    expect(asked.view().asking?.rule).toBe('unreliable')
    expect(found(asked.rules('unreliable', true))).toMatchObject({ thumb: null })
    const going = answered(begin(), 'two', 'two').rules('unreliable', false)
    expect(going.step()?.place).toMatchObject({ site: 'thumb', spacing: 'g6' })
  })

  test('a site that is not allowed has no value, the others have', () => {
    const given = begin().on().closes('site', 'not_allowed')
    expect(given.step()?.place).toMatchObject({ site: 'index' })
    const scores = gaps(given, 10, 5).scores()
    expect(scores.each('static_gap', { hand: 'right' })).toMatchObject({ index: 5 })
  })
})

test('moving points begin at 8 mm and are a score of their own', () => {
  const given = begin({ ways: 'moving' }).on()
  expect(given.step()?.place).toMatchObject({ site: 'thumb', stride: 'g8' })
  gaps(given, 10, 10, 5)
  expect(found(given, 'moving_gap')).toMatchObject({ thumb: 7 })
})

test('both ways: static first at each site, then moving', () => {
  const given = gaps(begin({ ways: 'both' }), 10, 5)
  expect(given.step()?.place).toMatchObject({ site: 'thumb', stride: 'g8' })
  gaps(given, 10, 5)
  expect(given.step()?.place).toMatchObject({ site: 'index', spacing: 'g5' })
})

test('a whole hand: five tips, the unaffected hand first', () => {
  const given = give('two_point_discrimination', {
    facts: facts(arms('affected', 'unaffected')),
    conditions: { ways: 'static', accept: '7' },
  })
  for (let site = 0; site < 10; site += 1) gaps(given, 10, 5)
  expect(given.step()).toBeNull()
  const scores = given.scores()
  expect(scores.order).toEqual({ items: ['left', 'right'], rule: 'unaffected-first' })
  const each = { thumb: 5, index: 5, middle: 5, ring_ulnar: 5, little: 5 }
  expect(scores.each('static_gap', { hand: 'left' })).toEqual(each)
  expect(scores.each('static_gap', { hand: 'right' })).toEqual(each)
})

/** In how many ways ten answers can have so many right ones. */
function ways(right: number): number {
  let count = 1
  for (let at = 1; at <= right; at += 1) count = (count * (10 - at + 1)) / at
  return count
}

function atLeast(right: number): number {
  let sum = 0
  for (let at = right; at <= 10; at += 1) sum += ways(at)
  return sum
}

// Worked out: of 1024 equally likely answers to ten touches, 176 have 7 right or more, 56 have 8 or more.
test('by guessing alone 7 of 10 come about in 17 of 100, 8 of 10 in 5.5', () => {
  expect(atLeast(7)).toBe(176)
  expect(atLeast(7) / 1024).toBeCloseTo(0.17, 2)
  expect(atLeast(8) / 1024).toBeCloseTo(0.055, 3)
})
