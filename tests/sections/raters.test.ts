import { describe, expect, test } from 'vitest'
import { buildResult } from '../../protocols/scoring/build-result.ts'
import { givenOf } from '../../protocols/scoring/given.ts'
import { scoreAll } from '../../protocols/scoring/scores.ts'
import { ADMINISTRATION, facts, Giving, madeProtocol } from '../runner/giving.ts'
import { rehearsed } from './rehearsed.ts'

const protocolWith = (raters: string) =>
  madeProtocol(
    `
  - for-each: task
    in: tasks
    steps:
      - { timed: reach, start: { said: go }, stop: { seen: There. } }
      - for-each: rater
        in: raters
        steps:
          - { measured: quality, of: reach, unit: "{score}", range: [0, 3] }
  - { position: after }
`,
    `
lists: { tasks: [{ id: low }, { id: high }] }
raters: ${raters}
scores:
  - { score: by_rater, each: rater, value: sum(quality.value), unit: "{score}", better: higher, decimals: 0 }
  - { score: joined, value: mean(by_rater), unit: "{score}", better: higher, decimals: 1 }
`,
  )

const UNSEEN = protocolWith('{ count: 2, unseen: true }')
const begun = (protocol = UNSEEN) => new Giving(protocol).begin(facts({ dominantBefore: 'right' }))
const shown = (giving: Giving) =>
  giving
    .view()
    .trials.filter(({ step }) => step === 'quality')
    .map(({ place, readings }) => `${place.rater} ${readings.value?.value ?? 'unseen'}`)

describe('two who rate', () => {
  test('rate the same trial one after the other, each told apart in its place', () => {
    const giving = begun().time(3)
    expect(giving.where()).toBe('quality at low, rater_1: waiting')
    expect(giving.view().step?.passes.at(-1)).toMatchObject({
      list: 'raters',
      text: 'Rater 1',
      number: 1,
      of: 2,
    })
    giving.measure(3)
    expect(giving.where()).toBe('quality at low, rater_2: waiting')
  })

  test('unseen by each other: the second doesn’t see what the first gave', () => {
    const giving = begun().time(3).measure(3)
    expect(shown(giving)).toEqual(['rater_1 unseen'])
    giving.measure(2).time(3)
    expect(shown(giving)).toEqual(['rater_1 3', 'rater_2 unseen'])
  })

  test('see each other where the protocol doesn’t forbid it', () => {
    const giving = begun(protocolWith('{ count: 2 }')).time(3).measure(3)
    expect(shown(giving)).toEqual(['rater_1 3'])
  })

  test('are scored each by itself and together, and all is seen once the rating is over', () => {
    const giving = begun().time(3).measure(3).measure(2).time(3).measure(1).measure(0)
    expect(giving.where()).toBe('after: waiting')
    expect(shown(giving)).toEqual(['rater_1 3', 'rater_2 2', 'rater_1 1', 'rater_2 0'])
    const scores = scoreAll(giving.runner.standing(giving.administration))
    expect(scores.map(({ score, value }) => `${score.name} ${value}`)).toEqual([
      'by_rater 4',
      'by_rater 2',
      'joined 3',
    ])
  })

  test('a void by the second takes back the whole trial, and what the first gave for it', () => {
    const giving = begun().time(3).measure(3)
    giving.do(giving.body('entered', { value: 1, confirmed: false })).press('voided')
    expect(giving.where()).toBe('reach at low: waiting')
    expect(shown(giving).length).toBe(2)
    expect(giving.rows('quality')).toEqual([])
    giving.time(4)
    expect(giving.where()).toBe('quality at low, rater_1: waiting')
  })

  test('are called by their number in the result too', () => {
    const giving = begun().time(3).measure(3).measure(2).time(3).measure(1).measure(0)
    const { administration, protocol, runner } = giving
    const { scores: built } = buildResult({
      protocol,
      administration: givenOf(ADMINISTRATION, administration),
      standing: runner.standing(administration),
      earlier: [],
      verified: new Map(),
    })
    expect(built.flatMap(({ passes }) => passes.map(({ text }) => text))).toEqual(['Rater 1', 'Rater 2'])
  })

  test('are rehearsed to the end', () => {
    expect(rehearsed(UNSEEN, 3).end).toBe('finished')
  })
})
