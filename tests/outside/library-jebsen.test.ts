/** The Jebsen-Taylor test against what is published of it. */
import { describe, expect, test } from 'vitest'
import { parse } from 'yaml'
import { fileOf, rowsOf } from '../library/folders.ts'
import { arms, facts, give } from '../library/giving.ts'

const rows = rowsOf('jebsen_taylor', 'norms/jebsen1969.csv')
const TASKS = [...new Set(rows.map(({ subtest }) => subtest))]

const find = (subtest: string | undefined, sex: string, hand: string, from: string) =>
  rows.find((row) => row.subtest === subtest && row.sex === sex && row.hand === hand && row.age_min === from)

// Seen, on a public page of a stroke encyclopedia: the sentence has 24 letters, of third-grade difficulty.
test('each sentence that the kit proposes has 24 letters, and no long word', () => {
  const { kit } = parse(fileOf('jebsen_taylor', 'protocol.yaml')) as {
    kit: { sentences: { check: string } }
  }
  const [, examples = ''] = /for instance: (.*?) Another one/.exec(kit.sentences.check) ?? []
  const sentences = examples.split('. ').map((sentence) => sentence.replace(/[^A-Za-z ]/g, ''))
  expect(sentences).toHaveLength(4)
  for (const sentence of sentences) {
    expect(sentence.replaceAll(' ', '')).toHaveLength(24)
    expect(Math.max(...sentence.split(' ').map((word) => word.length))).toBeLessThan(7)
  }
})

// Memory: 1969, 120 people of 20 to 59 and 30 of 60 to 94 of each sex, which makes the 300 (seen nowhere).
test('1969: each task has 300 people, 150 of each sex, but for the cell that is left out', () => {
  for (const task of TASKS) {
    for (const hand of ['dominant', 'nondominant']) {
      const people = rows
        .filter((row) => row.subtest === task && row.hand === hand)
        .reduce((sum, { n }) => sum + Number(n), 0)
      expect(people).toBe(task === 'writing' && hand === 'dominant' ? 270 : 300)
    }
  }
})

/** Means of the seven tasks of men of 20 to 59. */
const times = (hand: string) => TASKS.map((task) => Number(find(task, 'M', hand, '20')?.mean))

/**
 * Memory: sums of the seven means of 1969 worked out on paper: men of 20 to 59, dominant 12.2 + 4.0 + 5.9 + 6.4 + 3.3 +
 * 3.0 + 3.0 = 37.8, other 61.0. Seen: the cut-off between healthy and injured totals is 37.08 s, and 320 Italian adults
 * had 49.97 s (SD 27.28) with the dominant and 80.16 s (43.13) with the other hand.
 */
describe('totals', () => {
  test.each([
    ['dominant', 37.8, 49.97, 27.28],
    ['nondominant', 61, 80.16, 43.13],
  ])(
    'a hand that needs the mean of each task, %s: %f s, within an SD of the Italian total',
    (hand, sum, mean, sd) => {
      const given = give('jebsen_taylor', {
        facts: facts(arms('unaffected', 'absent')),
        conditions: { template: 'not_used' },
      })
      for (const seconds of times(hand)) given.run(seconds)
      const total = given.scores().value('total', 'right') ?? NaN
      expect(total).toBeCloseTo(sum, 9)
      expect(Math.abs(total - mean)).toBeLessThan(sd)
    },
  )

  test('the cut-off for injured hands lies near the healthy mean of the dominant hand', () => {
    expect(Math.abs(37.08 - times('dominant').reduce((sum, each) => sum + each, 0))).toBeLessThan(2)
  })
})

/** How much slower a row's mean is than that of the same task and sex in another group. */
const against = (row: Readonly<Record<string, string>>, hand: string, from: string): number =>
  Number(row.mean) - Number(find(row.subtest, row.sex ?? '', hand, from)?.mean ?? NaN)

// Common practice, and seen in abstracts of later studies: the other hand is slower, and age slows every task. Memory: one
// cell goes the other way, light cans in women of 60 to 94, 3.4 s with the other and 3.5 s with the dominant hand.
test('1969: the other hand is slower, but for one cell, and the old are slower than the young', () => {
  const faster = rows
    .filter(({ hand }) => hand === 'nondominant')
    .filter((row) => against(row, 'dominant', row.age_min ?? '') < 0)
  expect(faster.map(({ subtest, sex, age_min }) => `${subtest} ${sex} ${age_min}`)).toEqual([
    'large_light F 60',
  ])
  const old = rows.filter(({ age_min }) => age_min === '60')
  expect(old).toHaveLength(27)
  expect(old.filter((row) => !(against(row, row.hand ?? '', '20') > 0))).toEqual([])
})

// The inch is 2.54 cm and the pound 0.45359237 kg exactly; sizes in inches and pounds seen.
test('cards and cans in metric sizes', () => {
  const { kit } = parse(fileOf('jebsen_taylor', 'protocol.yaml')) as {
    kit: Record<'cards' | 'cans', { check: string; text: string }>
  }
  expect(kit.cards.check).toContain(`${(3 * 2.54).toFixed(1)} by ${(5 * 2.54).toFixed(1)} cm`)
  expect(kit.cans.text).toContain(`${(0.45359237).toFixed(2)} kg`)
})
