import { describe, expect, test } from 'vitest'
import { arms, facts, type Giving, give } from './giving.ts'

/** One hand, by the five-piece set and upwards until felt, unless said otherwise. */
const begin = (conditions: Readonly<Record<string, string>> = {}): Giving =>
  give('touch_threshold', {
    facts: facts(arms('affected', 'absent')),
    conditions: { filament_set: 'five', search: 'screen', ...conditions },
  }).on()

const fromBothSides = (): Giving => begin({ filament_set: 'twenty', search: 'limits' })

const levelOf = (given: Giving): string => {
  const { site, filament, filament_turn, thread, thread_turn } = given.step()?.place ?? {}
  return [site, filament ?? thread, filament_turn ?? thread_turn].join(' ')
}

/** A blank, where one was drawn here. */
function blank(given: Giving, answer = 'silent'): Giving {
  return given.on().step()?.name.startsWith('blank') ? given.answers(answer) : given
}

/** The filament at hand is felt at once, or at none of its touches. */
function level(given: Giving, felt: boolean, atBlank = 'silent'): Giving {
  const here = levelOf(blank(given, atBlank))
  if (felt) return given.answers('felt')
  while (given.step()?.name.startsWith('felt') && levelOf(given) === here) given.answers('not_felt')
  return given
}

const levels = (given: Giving, ...felt: readonly boolean[]): Giving =>
  felt.reduce((so, each) => level(so, each), given)

const found = (given: Giving, score: string) => given.scores().each(score, { hand: 'right' })

describe('upwards until felt, five-piece set', () => {
  test('2.83 is felt: at or below it, which is said', () => {
    const given = levels(begin(), true)
    expect(given.step()?.place).toMatchObject({ site: 'index' })
    expect(found(given, 'threshold_five')).toMatchObject({ thumb: 0.07 })
    expect(found(given, 'marking_five')).toMatchObject({ thumb: 2.83 })
    expect(given.noted()).toEqual(['at_lightest'])
  })

  test('2.83 and 3.61 are not felt, 4.31 is: 2 gf', () => {
    const given = levels(begin(), false, false, true)
    expect(given.step()?.place).toMatchObject({ site: 'index' })
    expect(found(given, 'threshold_five')).toMatchObject({ thumb: 2 })
  })

  test('6.65 isn’t felt: at least 300 gf, a bound and not 301', () => {
    const given = levels(begin(), false, false, false, false, false)
    expect(given.step()?.place).toMatchObject({ site: 'index' })
    const scores = given.scores()
    expect(scores.each('threshold_five', { hand: 'right' })).toMatchObject({ thumb: 300 })
    expect(scores.over('threshold_five', { hand: 'right', site: 'thumb' })).toBe(true)
  })

  test('a whole hand at its four places', () => {
    const given = levels(begin(), true, false, true, true, false, false, true)
    expect(blank(given).step()).toBeNull()
    expect(found(given, 'threshold_five')).toEqual({ thumb: 0.07, index: 0.4, little: 0.07, web: 2 })
  })
})

describe('three touches up to 4.08, one from 4.17', () => {
  test('one answer in three is enough', () => {
    const given = begin().answers('not_felt').answers('not_felt')
    expect(given.step()?.place).toMatchObject({ filament: 'f283', presses: 3 })
    expect(given.answers('felt').step()?.place).toMatchObject({ site: 'index' })
  })

  test('a heavier one is given once', () => {
    const given = levels(begin(), false, false)
    expect(given.step()?.place).toMatchObject({ filament: 'f431', presses: 1 })
    expect(given.answers('not_felt').step()?.place).toMatchObject({ filament: 'f456' })
  })

  test('a void touch is given again and is none of the three', () => {
    const given = begin().voided('slid')
    expect(given.step()?.place).toMatchObject({ filament: 'f283', presses: 1 })
  })
})

describe('from both sides, twenty-piece set', () => {
  test('from above: 2.83 and 2.44 felt, 2.36 not, 2.44 felt again; 2.44 is found', () => {
    const given = levels(fromBothSides(), true, true, false)
    expect(given.step()?.place).toMatchObject({ site: 'thumb', thread: 'f244' })
    levels(given, true)
    expect(blank(given).step()?.place).toMatchObject({ site: 'index', thread: 'f283' })
    expect(found(given, 'threshold_twenty')).toMatchObject({ thumb: 0.04 })
  })

  test('2.44 isn’t felt the second time: the last presentation counts, and 2.83 is found', () => {
    const given = levels(fromBothSides(), true, true, false, false, true)
    expect(found(given, 'threshold_twenty')).toMatchObject({ thumb: 0.07 })
  })

  test('from below: 2.83 and 3.22 not felt, 3.61 felt, 3.22 not again; 3.61 is found', () => {
    const given = levels(fromBothSides(), false, false, true, false)
    expect(blank(given).step()?.place).toMatchObject({ site: 'index' })
    expect(found(given, 'threshold_twenty')).toMatchObject({ thumb: 0.4 })
    expect(found(given, 'marking_twenty')).toMatchObject({ thumb: 3.61 })
  })
})

describe('blanks', () => {
  test('come once in five, over the places of a hand', () => {
    const given = levels(begin(), false, false, false, false)
    expect(given.step()).toMatchObject({ name: 'blank', place: { site: 'thumb', filament: 'f665' } })
    expect(given.answers('silent').step()?.name).toBe('felt')
  })

  test('one false answer is counted; two in five leave the hand without thresholds', () => {
    const given = levels(begin(), false, false, false, false)
    level(given, true, 'answered')
    expect(given.scores().value('false_answers', 'right')).toBe(1)
    expect(found(given, 'threshold_five')).toMatchObject({ thumb: 300 })
    // Five more filaments at the index: the tenth drawn in this hand is the second blank.
    levels(given, false, false, false, false)
    blank(given, 'answered')
    expect(given.step()).toBeNull()
    expect(given.noted()).toContain('unreliable')
    const scores = given.scores()
    expect(scores.value('false_answers', 'right')).toBe(2)
    for (const value of Object.values(scores.each('threshold_five', { hand: 'right' })))
      expect(value).toBeNull()
  })
})

test('a place with broken skin is left out as not allowed, and is no number', () => {
  const given = begin().closes('site', 'not_allowed')
  expect(given.step()?.place).toMatchObject({ site: 'index' })
  const scores = levels(given, true).scores()
  expect(scores.each('threshold_five', { hand: 'right' })).toMatchObject({ index: 0.07 })
  expect(scores.each('threshold_five', { hand: 'right' }).thumb ?? null).toBeNull()
})

test('the unaffected hand comes first, and its blanks are its own', () => {
  const given = give('touch_threshold', {
    facts: facts(arms('affected', 'unaffected')),
    conditions: { filament_set: 'five', search: 'screen' },
  }).on()
  expect(given.step()?.place).toMatchObject({ hand: 'left', site: 'thumb' })
  levels(given, true, true, true, true)
  expect(given.step()).toMatchObject({ name: 'felt', place: { hand: 'right', site: 'thumb' } })
})
