import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { checkExpression, evaluate, parseExpression } from '../../protocols/language/expressions/index.ts'
import { scopeAt } from '../../protocols/scoring/scope.ts'
import { scoreAll, scoresEqual } from '../../protocols/scoring/scores.ts'
import { carries, factsOf, nameOf, protocolOf, scoresOf, shortOf, standingOf, trialOf } from './invented.ts'

const protocol = protocolOf()
const standing = (parts: Parameters<typeof standingOf>[0] = {}) => standingOf({ protocol, ...parts })

describe('an expression sees the rows of its own place', () => {
  const scores = scoresOf(standing())

  test.each([
    ['fastest@right@near', 9],
    ['fastest@right@far', 19],
    ['fastest@left@near', 10],
    ['fastest@left@far', 20],
    ['total@right', 28],
    ['total@left', 30],
    ['average@right', 15],
    ['average@left', 16],
    ['typical@right', 15],
    ['weighted@right@far', 57],
    ['far_only@right', 60],
    ['turns@right', 12],
    ['turns@left', 6],
    ['side_ratio', 30 / 28],
    ['speed@right', 16 / 28],
  ])('%s is %d', (name, value) => {
    expect(scores[name]).toBe(value)
  })

  test('a score that is a condition only serves others', () => {
    expect(Object.keys(scores).some((name) => name.startsWith('enough'))).toBe(false)
  })

  test('a value names the trials it rests on, those of other hands left out', () => {
    const trials = carries()
    const total = scoreAll(standing({ trials })).find((one) => nameOf(one) === 'total@left')
    expect([...(total?.trials ?? [])].sort()).toEqual(
      trials.filter(({ place }) => place.hand === 'left').map(({ id }) => id),
    )
  })

  test('a rule inside a loop sees a wider score narrowed to its place', () => {
    const source = 'total > 29 && fastest > 9 && round == 2 && task.weight == 2'
    const parsed = parseExpression(source)
    if (parsed.tree === null) throw new Error('unread')
    const { expression } = checkExpression(source, parsed.tree, {
      total: { is: 'number', unit: 's' },
      fastest: { is: 'number', unit: 's' },
      round: { is: 'number', unit: null },
      task: { is: 'record', fields: { weight: { is: 'number', unit: null } } },
    })
    if (expression === null) throw new Error('unsound')
    const at = (hand: string) =>
      evaluate(expression, scopeAt(standing(), { hand, task: 'near', round: 2 })).value
    expect([at('left'), at('right')]).toEqual([true, false])
  })
})

describe('STD-ADM-1 practice trials never enter a score, nor do void ones', () => {
  const practice = fc.array(
    fc.record({
      step: fc.constantFrom('try_out', 'carry'),
      hand: fc.constantFrom('right', 'left'),
      task: fc.constantFrom('near', 'far'),
      round: fc.integer({ min: 1, max: 3 }),
      time: fc.integer({ min: 0, max: 900 }),
      kind: fc.constantFrom('practice', 'void', 'running'),
      at: fc.nat(12),
    }),
    { maxLength: 10 },
  )

  test('scores with and without them are equal, to the last bit', () => {
    const trials = carries()
    const without = scoreAll(standing({ trials }))
    fc.assert(
      fc.property(practice, (more) => {
        const all = [...trials]
        for (const { step, hand, task, round, time, kind, at } of more)
          all.splice(
            at,
            0,
            trialOf({
              step,
              place: { hand, task, round },
              readings: { time },
              practice: kind === 'practice',
              status: kind === 'void' ? 'void' : kind === 'running' ? 'running' : 'standing',
            }),
          )
        expect(scoresEqual(scoreAll(standing({ trials: all })), without)).toBe(true)
      }),
      { numRuns: 50 },
    )
  })

  test('a trial that does stand changes them, so the check can fail', () => {
    const trials = [
      ...carries(),
      trialOf({ step: 'carry', place: { hand: 'right', task: 'near', round: 4 }, readings: { time: 1 } }),
    ]
    expect(scoresOf(standing({ trials }))['total@right']).toBe(20)
  })
})

describe('nothing is zero by accident', () => {
  test.each(['refused', 'not_allowed', 'absent', 'not_given', 'stopped', 'skipped'] as const)(
    'a trial that ended as %s makes the score unavailable, for that reason',
    (outcome) => {
      const trials = carries((hand, task, round) =>
        hand === 'left' && task === 'far' && round === 2 ? { outcome, readings: {} } : {},
      )
      const scores = scoreAll(standing({ trials }))
      const total = scores.find((one) => nameOf(one) === 'total@left')
      expect(total?.missing).toEqual({
        code: outcome,
        detail: { hand: 'left', task: 'far', round: 2, step: 'carry', column: 'time' },
      })
      expect(total?.value).toBeNull()
      expect(scoresOf(standing({ trials }))['total@right']).toBe(28)
      expect(scoresOf(standing({ trials }))['typical@left']).toBe(12)
    },
  )

  test('an outcome counts as what the file says: a condition, or a bound that is passed on', () => {
    const unable = carries((hand, task, round) =>
      hand === 'left' && task === 'far' && round === 2 ? { outcome: 'unable', readings: {} } : {},
    )
    expect(scoresOf(standing({ trials: unable }))['far_only@left']).toBe(21 + 60 + 22)
    expect(scoresOf(standing({ trials: unable, conditions: { fill: '1 min' } }))['far_only@left']).toBe(103)
    expect(scoresOf(standing({ trials: unable, conditions: {} }))['far_only@left']).toBe('condition_unknown')
    const limit = carries((hand, task, round) =>
      hand === 'left' && task === 'far' && round === 2 ? { outcome: 'limit', readings: { time: null } } : {},
    )
    const scores = scoresOf(standing({ trials: limit }))
    expect(scores['far_only@left']).toEqual({ over: 21 + 90 + 22 })
    expect(scores['fastest@left@far']).toBe(21)
    expect(scores['average@left']).toEqual({ over: (33 + 21 + 90 + 22) / 6 })
    expect(scores['side_ratio']).toBe((10 + 21) / 28)
  })

  test('what a score needs and does not have is said', () => {
    const few = carries((hand, task) =>
      hand === 'left' && task === 'far' ? { outcome: 'refused', readings: {} } : {},
    )
    expect(scoresOf(standing({ trials: few }))['typical@left']).toBe('needs_not_met')
  })

  test('before the first trial every hand is there, without a value', () => {
    const scores = scoresOf(standing({ trials: [] }))
    expect(scores['average@right']).toBe('no_rows')
    expect(scores['average@left']).toBe('no_rows')
    expect(scores['side_ratio']).toBe('no_rows')
  })

  test('no score is a number where a row of it is missing, whatever is missing', () => {
    const holes = fc.array(fc.tuple(fc.nat(11), fc.constantFrom('refused', 'not_given', 'absent')), {
      minLength: 1,
      maxLength: 5,
    })
    fc.assert(
      fc.property(holes, (cut) => {
        const trials = carries().map((trial, at) => {
          const hole = cut.find(([index]) => index === at)
          return hole === undefined ? trial : { ...trial, outcome: hole[1] as 'refused', readings: {} }
        })
        const scores = scoreAll(standing({ trials }))
        for (const { score, place, value } of scores.filter((one) => one.score.name === 'average')) {
          const cutHere = trials.some((one) => one.place.hand === place.hand && one.outcome !== 'done')
          expect([score.name, value === null]).toEqual(['average', cutHere])
        }
        expect(scores.every(({ value, missing }) => (value === null) === (missing !== null))).toBe(true)
        expect(scores.every(({ value }) => value === null || Number.isFinite(value))).toBe(true)
      }),
      { numRuns: 60 },
    )
  })

  test('a value outside what the score can be is no score', () => {
    const fast = carries(() => ({ readings: { time: 0.5 } }))
    expect(scoresOf(standing({ trials: fast }))['speed@right']).toBe('outside_range')
  })
})

describe('which hand is which comes from the facts, and none is guessed', () => {
  const arm = factsOf().arms.right
  const armsOf = (right: typeof arm.status, left: typeof arm.status) => ({
    arms: { right: { ...arm, status: right }, left: { ...arm, status: left } },
  })

  test.each([
    ['unaffected', 'affected', 2],
    ['affected', 'unaffected', -2],
    ['affected', 'affected', 'both_affected'],
    ['unaffected', 'unaffected', 'none_affected'],
    ['unknown', 'affected', 'affected_unknown'],
    ['less_affected', 'affected', 'both_affected'],
  ] as const)('right %s, left %s: the affected less the unaffected is %s', (right, left, value) => {
    expect(scoresOf(standing({ facts: factsOf(armsOf(right, left)) }))['worse']).toBe(value)
  })

  test.each([
    ['right', 30 / 28],
    ['left', 28 / 30],
    ['mixed', 'dominance_unknown'],
    ['not_settled', 'dominance_unknown'],
    ['unknown', 'dominance_unknown'],
  ] as const)('dominant %s: nondominant over dominant is %s', (dominantBefore, value) => {
    expect(scoresOf(standing({ facts: factsOf({ dominantBefore }) }))['side_ratio']).toBe(value)
  })

  test('swapping the hands of every trial swaps the scores of the hands', () => {
    const times = fc.array(fc.integer({ min: 30, max: 900 }), { minLength: 12, maxLength: 12 })
    fc.assert(
      fc.property(times, (given) => {
        const trials = carries().map((trial, at) => ({
          ...trial,
          readings: {
            time: {
              value: (given[at] ?? 0) / 10,
              unit: 's',
              over: false,
              typed: false,
              confirmed: false,
              corrected: null,
            },
          },
        }))
        const swapped = trials.map((trial) => ({
          ...trial,
          place: { ...trial.place, hand: trial.place.hand === 'right' ? 'left' : 'right' },
        }))
        const before = scoreAll(standing({ trials }))
        const after = scoresOf(standing({ trials: swapped }))
        for (const scored of before.filter(
          ({ score }) => score.each.includes('hand') && score.name !== 'turns',
        )) {
          const other = { ...scored.place, hand: scored.place.hand === 'right' ? 'left' : 'right' }
          expect(after[nameOf({ ...scored, place: other })]).toEqual(shortOf(scored))
        }
      }),
      { numRuns: 30 },
    )
  })
})

test('STD-ADM-9 scoring again, from trials in any other order, gives the same', () => {
  const trials = carries()
  const stored = scoreAll(standing({ trials }))
  expect(scoresEqual(scoreAll(standing({ trials: structuredClone(trials) })), stored)).toBe(true)
  const other = trials.map((one, at) =>
    at === 3 ? { ...one, outcome: 'refused' as const, readings: {} } : one,
  )
  expect(scoresEqual(scoreAll(standing({ trials: other })), stored)).toBe(false)
})

test.each([
  ["far_only + (task.id == 'farr' ? 1 : 0)", 'far'],
  ["hand.id == 'rigth' ? 1 : 0", 'right'],
  ["count(carry.rows.filter(r, r.task == 'faar'))", 'far'],
])('a slip in the id of an item is found before anything is given: %s', (value, meant) => {
  const scores = `
scores:
  - { score: far_only, each: [hand, task], value: min(carry.time), unit: s, better: lower, decimals: 1 }
  - { score: slip, each: [hand, task], value: "${value}", better: none, decimals: 1 }
`
  expect(() => protocolOf({ scores })).toThrow(`'${meant}'`)
})

test('a test that was left as the wrong one keeps its trials and has no value', () => {
  const scores = scoreAll(standing({ isWithdrawn: true }))
  expect(new Set(scores.map(({ missing }) => missing?.code))).toEqual(new Set(['withdrawn']))
})

test('properties of items are read in the unit of their type', () => {
  const loads = protocolOf({
    steps: `
lists:
  loads: [{ id: light, mass: 50 g }, { id: heavy, mass: 0.2 kg }]
steps:
  - for-each: load
    in: loads
    steps:
      - { measured: lift, unit: s, range: [0, 60], decimals: 1 }
`,
    scores: `
scores:
  - { score: moment, title: Moment, each: load, value: "load.mass * only(lift.value)", unit: "g.s", better: none, decimals: 1 }
`,
  })
  const trials = ['light', 'heavy'].map((load) =>
    trialOf({ step: 'lift', place: { load }, readings: { value: 2 } }),
  )
  expect(scoresOf(standingOf({ protocol: loads, trials }))).toEqual({
    'moment@light': 100,
    'moment@heavy': 400,
  })
})

test('a reading in another unit is brought to the unit of its column', () => {
  const minutes = carries((_hand, _task, _round, time) => ({ readings: { time: time / 60 }, unit: 'min' }))
  const scores = scoresOf(standing({ trials: minutes }))
  expect(scores['total@right']).toBeCloseTo(28, 12)
})

test('scores that go round in a circle are said, and nothing runs away', () => {
  const circle = {
    ...protocol,
    scores: protocol.scores.map((one) => (one.name === 'fastest' ? { ...one, value: total() } : one)),
  }
  expect(scoresOf(standingOf({ protocol: circle }))['total@right']).toBe('circular')

  function total() {
    const found = protocol.scores.find(({ name }) => name === 'total')
    if (found === undefined) throw new Error('no total')
    return found.value
  }
})
