import { describe, expect, test } from 'vitest'
import type { Closing } from '../../protocols/language/model.ts'
import { arms, facts, type Giving, give } from './giving.ts'

const AFTER_STROKE = { facts: facts(arms('affected', 'unaffected')), conditions: { phase: 'later' } }

/** Begins with the right arm alone, so that one arm makes a whole test. */
const alone = (conditions: Readonly<Record<string, string>> = {}): Giving =>
  give('action_research_arm', {
    facts: facts(arms('affected', 'absent')),
    conditions: { phase: 'later', ...conditions },
  })

/** A time that allows the grade: within 5 s for a 3, half a minute for a 2, the limit for what is only a part. */
const SECONDS = [60, 60, 30, 4] as const

/** Items given one after another, with these grades. */
function items(given: Giving, ...grades: readonly number[]): Giving {
  for (const grade of grades) given.run(SECONDS[grade] ?? 60).grades(grade)
  return given
}

const close = (given: Giving, outcome: Closing): Giving => given.on().closes('trial', outcome)

test('ordinary: the less affected arm first; 3 on the hardest item credits the part, the rest is summed', () => {
  const given = give('action_research_arm', AFTER_STROKE)
  items(given, 3, 3, 3, 3)
  expect(given.step()?.place).toMatchObject({ hand: 'right', part: 'grasp', task: 'cube_10' })
  // Grasp 2+3+3+2+2+1 = 13, grip 1+2+2+1 = 6, pinch 0 and 0, then four credited 0s, gross 3 and two credited 3s.
  const scores = items(given, 2, 3, 3, 2, 2, 1, 1, 2, 2, 1, 0, 0, 3).scores()
  expect(scores.order).toEqual({ items: ['left', 'right'], rule: 'less-affected-first' })
  expect(scores.value('total', 'left')).toBe(57)
  expect(scores.value('observed', 'left')).toBe(4)
  expect(scores.value('credited', 'left')).toBe(15)
  expect(scores.each('points', { hand: 'left' })).toEqual({ grasp: 18, grip: 12, pinch: 18, gross: 9 })
  expect(scores.each('points', { hand: 'right' })).toEqual({ grasp: 13, grip: 6, pinch: 0, gross: 9 })
  expect(scores.value('total', 'right')).toBe(28)
  expect(scores.value('observed', 'right')).toBe(13)
  expect(scores.value('credited', 'right')).toBe(6)
})

test('an item that was refused was not seen', () => {
  const given = close(items(alone(), 2, 2, 1), 'refused')
  expect(items(given, 1, 1).scores().value('observed', 'right')).toBe(5)
})

describe('skip rules', () => {
  test('less than 3 on the hardest and something on the easiest: every item of the part is given', () => {
    const given = items(alone(), 1, 1)
    expect(given.step()?.place).toMatchObject({ part: 'grasp', task: 'cube_5' })
    items(given, 0, 0, 0, 0)
    expect(given.step()?.place).toMatchObject({ part: 'grip', task: 'pour' })
    expect(given.noted()).toEqual([])
  })

  test('0 on both ends the part', () => {
    const given = items(alone(), 0, 0)
    expect(given.step()?.place).toMatchObject({ part: 'grip', task: 'pour' })
    expect(given.noted()).toEqual(['no_credit'])
  })

  test('the ambiguous middle, 1 or 2 and then 0: confirmed, the rest is credited with 0 and the 2 stands', () => {
    const given = items(alone(), 2, 0)
    expect(given.view().asking?.rule).toBe('odd_pattern')
    given.rules('odd_pattern', true)
    expect(given.step()?.place).toMatchObject({ part: 'grip' })
    const scores = items(given, 3, 3, 3).scores()
    expect(scores.each('points', { hand: 'right' })).toEqual({ grasp: 2, grip: 12, pinch: 18, gross: 9 })
    expect(scores.value('total', 'right')).toBe(41)
  })

  test('the ambiguous middle, not confirmed: the remaining items are given', () => {
    const given = items(alone(), 1, 0).rules('odd_pattern', false)
    expect(given.step()?.place).toMatchObject({ part: 'grasp', task: 'cube_5' })
    const scores = items(given, 1, 0, 1, 0, 3, 3, 3).scores()
    expect(scores.each('points', { hand: 'right' })).toMatchObject({ grasp: 3 })
    expect(scores.value('total', 'right')).toBe(42)
  })

  test('the last part is ended by 0 on item 18 where the clinic has it so, as is usual', () => {
    const given = items(alone(), 3, 3, 3, 0)
    expect(given.step()?.place).toMatchObject({ part: 'gross', task: 'on_head' })
    items(given, 0)
    expect(given.step()).toBeNull()
    expect(given.scores().value('total', 'right')).toBe(48)
  })

  test('the last part is ended by 0 on item 17 where the clinic has it so; 0 on item 18 then ends nothing', () => {
    const ended = items(alone({ gross_gate: 'first' }), 3, 3, 3, 0)
    expect(ended.step()).toBeNull()
    expect(ended.scores().value('total', 'right')).toBe(48)
    const going = items(alone({ gross_gate: 'first' }), 3, 3, 3, 1, 0)
    expect(going.step()?.place).toMatchObject({ part: 'gross', task: 'to_mouth' })
    expect(items(going, 2).scores().value('total', 'right')).toBe(51)
  })

  test('without the skip rules all 19 items are given and none is credited', () => {
    const given = alone({ skips: 'all_items' })
    const scores = items(given, ...Array.from({ length: 19 }, () => 3)).scores()
    expect(given.step()).toBeNull()
    expect(scores.value('total', 'right')).toBe(57)
    expect(scores.value('observed', 'right')).toBe(19)
    expect(scores.value('credited', 'right')).toBe(0)
  })
})

describe('time and manner hold back a grade, and raise none', () => {
  test.each([
    [4.9, [0, 1, 2, 3]],
    [5, [0, 1, 2]],
    [59.9, [0, 1, 2]],
    [60, [0, 1]],
  ])('%s s allow the grades %j', (seconds, allowed) => {
    const taken = [0, 1, 2, 3].filter((grade) => {
      const given = alone().run(seconds)
      return given.refusal(() => given.grades(grade)) !== 'above_highest'
    })
    expect(taken).toEqual(allowed)
  })

  test.each(['trunk', 'grasp'])('%s: 2 at most, however fast', (happening) => {
    const given = alone().on().begins().happens(happening).stops(2)
    expect(() => given.grades(3)).toThrow('above_highest')
    expect(given.grades(2).scores().trials.at(-1)?.readings.grade?.value).toBe(2)
  })

  test('a higher grade is given only with a reason, and is a deviation', () => {
    const given = alone().run(6).grades(3, 'The clock was stopped late.')
    expect(given.view().deviations).toMatchObject([{ code: 'grade_above' }])
  })
})

describe('not every item', () => {
  test('tried and unable is 0 for the item', () => {
    const given = close(alone(), 'unable')
    const scores = items(given, 1, 1, 0, 0, 0, 3, 3, 3).scores()
    expect(scores.each('points', { hand: 'right' })).toMatchObject({ grasp: 2 })
    expect(scores.value('total', 'right')).toBe(41)
  })

  test.each(['refused', 'not_allowed', 'absent', 'not_given'] as const)(
    '%s is no 0: the part and the total have no value, the other parts do',
    (outcome) => {
      const given = close(items(alone(), 2, 2), outcome)
      const scores = items(given, 2, 2, 2, 3, 3, 3).scores()
      expect(scores.each('points', { hand: 'right' })).toEqual({ grasp: null, grip: 12, pinch: 18, gross: 9 })
      expect(scores.value('total', 'right')).toBeNull()
      expect(scores.why('total', 'right')).toBe(outcome)
    },
  )

  test('a refused hardest item can credit nothing: the others are given', () => {
    const given = close(alone(), 'refused')
    expect(given.step()?.place).toMatchObject({ part: 'grasp', task: 'cube_2' })
    expect(items(given, 0).step()?.place).toMatchObject({ part: 'grasp', task: 'cube_5' })
  })

  test('a void item is given again, and its time and grade with it', () => {
    const given = alone().run(30).voided('kit_moved')
    expect(given.step()).toMatchObject({ name: 'did', place: { task: 'cube_10' } })
    expect(items(given, 3).step()?.place).toMatchObject({ part: 'grip' })
  })

  test('stopped for pain half way: what was graded stands, the total has no value', () => {
    const given = items(alone(), 3, 3).on().begins().happens('pain').settles('test', 7)
    const scores = given.scores()
    expect(scores.each('points', { hand: 'right' })).toMatchObject({ grasp: 18, grip: 12 })
    expect(scores.value('total', 'right')).toBeNull()
  })
})
