/** Protocols that use the language where it is easily got wrong: outcomes, bounds, raters around everything. */
import { describe, expect, test } from 'vitest'
import { scoreAll } from '../../protocols/scoring/scores.ts'
import { facts, Giving, madeProtocol } from './giving.ts'

const scores = (giving: Giving) =>
  scoreAll(giving.runner.standing(giving.administration)).map(
    ({ score, place, value, over, missing }) =>
      `${[score.name, ...Object.values(place)].join(' ')} ${over ? '≥ ' : ''}${value ?? missing?.code}`,
  )
const close = (giving: Giving, what: string, outcome: 'unable' | 'refused' | 'not_allowed' | 'absent') =>
  giving.do({ kind: 'closed', what, place: giving.view().step?.place ?? {}, outcome, reason: '' })
const rate = (giving: Giving, grade: number) =>
  giving.do(giving.body('graded', { grade, reason: null })).press('kept')

describe('outcomes that count as something, each in its own way', () => {
  const OUTCOMES = madeProtocol(
    `
  - repeat: attempt
    times: 6
    steps:
      - timed: carry
        start: { said: go }
        stop: { seen: Home. }
        limit: 60 s
        counts-as: { limit: over 60 s, unable: 2 min, refused: over 90 s, not_allowed: { from: "100" } }
`,
    `
scores:
  - { score: least, value: min(carry.time), unit: s, better: lower, decimals: 1 }
  - { score: most, value: max(carry.time), unit: s, better: lower, decimals: 1 }
  - { score: all, value: sum(carry.time), unit: s, better: lower, decimals: 1 }
  - { score: middle, value: median(carry.time), unit: s, better: lower, decimals: 1 }
  - { score: two_best, value: "mean(lowest(carry.time, 2))", unit: s, better: lower, decimals: 1 }
  - { score: spread_out, value: sd(carry.time), unit: s, better: lower, decimals: 1 }
  - { score: left_over, value: 200 - max(carry.time), unit: s, better: higher, decimals: 1 }
  - { score: slow, value: "max(carry.time) > 100 ? 1 : 0", unit: "1", better: none, decimals: 0 }
  - { score: slower, value: "max(carry.time) > 130 ? 1 : 0", unit: "1", better: none, decimals: 0 }
`,
  )

  test('a bound is passed on by sums and picks, and by nothing that it would turn into a wrong number', () => {
    const giving = new Giving(OUTCOMES).begin(facts()).time(10).time(20)
    close(close(close(giving, 'carry', 'unable'), 'carry', 'refused'), 'carry', 'not_allowed')
    giving.start().press('stopped', 61_000).press('kept', 1500)
    expect(giving.rows('carry')).toEqual([
      '1 done time 10',
      '2 done time 20',
      '3 unable time 120',
      '4 refused time ≥90',
      '5 not_allowed time 100',
      '6 limit time ≥60',
    ])
    expect(scores(giving)).toEqual([
      'least 10',
      'most ≥ 120',
      'all ≥ 400',
      'middle ≥ 75',
      'two_best 15',
      'spread_out bound',
      'left_over bound',
      'slow 1',
      'slower bound',
    ])
  })

  test('one that counts as nothing leaves no value anywhere, and is its reason', () => {
    const giving = new Giving(OUTCOMES).begin(facts()).time(10)
    close(giving, 'carry', 'absent')
    for (const seconds of [11, 12, 13, 14]) giving.time(seconds)
    expect(scores(giving).map((score) => score.split(' ').at(-1))).toEqual(Array(9).fill('absent'))
  })
})

describe('raters around everything, with items in another order for each', () => {
  const AROUND = madeProtocol(
    `
  - for-each: rater
    in: raters
    steps:
      - for-each: task
        in: tasks
        order: shuffled
        steps:
          - { rated: quality, scale: { 0: None, 1: Part, 2: Full } }
`,
    `
lists: { tasks: [{ id: low }, { id: high }] }
raters: { count: 2, later: true }
scores:
  - { score: by_rater, each: rater, value: sum(quality.grade), unit: "{score}", better: higher, decimals: 0 }
`,
  )
  test('both may rate another day: nothing is given, and all of it is given later', () => {
    const giving = new Giving(AROUND).begin(facts())
    giving.do({ kind: 'put_off', rater: 'rater_1' }).do({ kind: 'put_off', rater: 'rater_2' })
    giving.do({ kind: 'finished' })
    expect(scores(giving)).toEqual(['by_rater rater_1 pending', 'by_rater rater_2 pending'])
    for (const [rater, grade] of [
      ['rater_2', 2],
      ['rater_1', 1],
    ] as const) {
      giving.do({ kind: 'rating_begun', rater })
      rate(rate(giving, grade), grade).do({ kind: 'rating_ended' })
    }
    expect(scores(giving)).toEqual(['by_rater rater_1 2', 'by_rater rater_2 4'])
  })

  test('what was graded already stays when the rest is put off', () => {
    const giving = rate(rate(new Giving(AROUND).begin(facts()), 2), 1)
    giving.do(giving.body('graded', { grade: 2, reason: null })).do({ kind: 'put_off', rater: 'rater_2' })
    expect(giving.where()).toBe('end')
    expect(giving.rows('quality').map((row) => row.split(' ').slice(1).join(' '))).toEqual([
      expect.stringContaining('done grade 2'),
      expect.stringContaining('done grade 1'),
      expect.stringContaining('done grade 2'),
      expect.stringContaining('pending'),
    ])
    giving.do({ kind: 'undone' }).do({ kind: 'undone' })
    expect(giving.view().raters).toMatchObject([{ toCome: 0 }, { toCome: 0 }])
  })
})
