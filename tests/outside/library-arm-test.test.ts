/**
 * The action research arm test against what is published of its rules. Seen, on two public pages: 3 on the hardest item
 * credits every item of its part (18, 12, 18 or 9 points); less than 3 there and 0 on the easiest item credits 0 to the
 * rest; otherwise all items are given. Memory, from the standard of 2008: 3 needs less than 5 s, 2 up to 60 s.
 */
import { expect, test } from 'vitest'
import { arms, facts, type Giving, give } from '../library/giving.ts'

const arm = (): Giving =>
  give('action_research_arm', {
    facts: facts(arms('affected', 'absent')),
    conditions: { phase: 'later' },
  })

/** Grades in the order given; the time is within what a grade allows. */
function graded(given: Giving, grades: readonly number[]): Giving {
  for (const grade of grades) given.run(grade === 3 ? 4 : 20).grades(grade)
  return given
}

const parts = (grades: readonly number[]) => graded(arm(), grades).scores().each('points', { hand: 'right' })

test('3 on the hardest item gives 18, 12, 18 and 9 points, 57 in all', () => {
  expect(parts([3, 3, 3, 3])).toEqual({ grasp: 18, grip: 12, pinch: 18, gross: 9 })
})

test('0 on the hardest and on the easiest gives 0 to each part', () => {
  expect(parts([0, 0, 0, 0, 0, 0, 0, 0])).toEqual({ grasp: 0, grip: 0, pinch: 0, gross: 0 })
})

test.each([
  [0, 1],
  [1, 1],
  [2, 3],
])('%i on the hardest and %i on the easiest: all items are given and summed', (first, second) => {
  const grasp = [first, second, 2, 2, 1, 1]
  const scored = parts([...grasp, 3, 3, 3])
  expect(scored.grasp).toBe(grasp.reduce((sum, each) => sum + each))
})

test.each([
  [4.99, 3],
  [5, 2],
  [59.99, 2],
])('%s s allow a %i and no more', (seconds, highest) => {
  const taken = [0, 1, 2, 3].filter((grade) => {
    const given = arm().run(seconds)
    return given.refusal(() => given.grades(grade)) === null
  })
  expect(taken.at(-1)).toBe(highest)
})

test('60 s without the whole task allow a 1', () => {
  expect(() => arm().run(60).grades(2)).toThrow('above_highest')
})
