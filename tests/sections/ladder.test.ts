import { array, assert, boolean, constantFrom, integer, property } from 'fast-check'
import { describe, expect, test } from 'vitest'
import { climb } from '../../protocols/sections/ladder/climb.ts'
import { scoreAll } from '../../protocols/scoring/scores.ts'
import { facts, Giving, madeProtocol } from '../runner/giving.ts'
import { rehearsed } from './rehearsed.ts'

const gaps = (turns: string) =>
  madeProtocol(
    `
  - for-each: hand
    in: hands
    order: right-first
    steps:
      - ladder: smallest
        over: gaps
        level: spacing
        begin: g4
        accepted: sum(told.value) >= 2
        moves: { accepted: down, failed: up }
        turns: ${turns}
        finds: least-accepted
        steps:
          - repeat: touch
            times: 2
            steps:
              - { measured: told, unit: "{count}", range: [0, 1] }
  - { position: after }
`,
    `
lists: { gaps: [{ id: g2, gap: 2 mm }, { id: g3, gap: 3 mm }, { id: g4, gap: 4 mm }, { id: g5, gap: 5 mm }] }
scores:
  - { score: found, each: hand, value: only(smallest.gap), unit: mm, better: lower, decimals: 0 }
  - { score: levels, each: [hand, spacing], value: count(told.value), unit: "{count}", better: none, decimals: 0 }
`,
  )

const ONE = gaps('1')
const begun = (protocol = ONE) => new Giving(protocol).begin(facts({ dominantBefore: 'right' }))
/** Gives a level: both touches told, or none. */
const level = (giving: Giving, told: boolean) => giving.measure(told ? 1 : 0).measure(told ? 1 : 0)
const found = (giving: Giving) =>
  scoreAll(giving.runner.standing(giving.administration))
    .filter(({ score, place }) => score.name === 'found' && place.hand === 'right')
    .map(({ value, over, missing }) => `${over ? '≥ ' : ''}${value ?? missing?.code}`)[0]

describe('a ladder', () => {
  test('goes down while levels are accepted; the first that fails ends it, and the level before is found', () => {
    const giving = begun()
    expect(giving.where()).toBe('told at right, g4, 1, 1: waiting')
    level(giving, true)
    expect(giving.where()).toBe('told at right, g3, 2, 1: waiting')
    level(giving, false)
    expect(giving.where()).toBe('told at left, g4, 1, 1: waiting')
    expect(found(giving)).toBe('4')
  })

  test('goes up while levels fail; the first that is accepted ends it', () => {
    const giving = begun()
    level(level(giving, false), true)
    expect(giving.where()).toBe('told at left, g4, 1, 1: waiting')
    expect(found(giving)).toBe('5')
  })

  test('ends at the smallest level when all are accepted', () => {
    const giving = begun()
    level(level(level(giving, true), true), true)
    expect(found(giving)).toBe('2')
    expect(giving.where()).toBe('told at left, g4, 1, 1: waiting')
  })

  test('beyond the last level is a bound, not the last level and not blank', () => {
    const giving = begun()
    level(level(giving, false), false)
    expect(giving.where()).toBe('told at left, g4, 1, 1: waiting')
    expect(found(giving)).toBe('≥ 5')
  })

  test('with two turns goes back over levels it has given, each presentation with rows of its own', () => {
    const giving = begun(gaps('2'))
    level(giving, false)
    expect(giving.where()).toBe('told at right, g5, 2, 1: waiting')
    level(giving, true)
    expect(giving.where()).toBe('told at right, g4, 3, 1: waiting')
    level(giving, true)
    expect(giving.where()).toBe('told at right, g3, 4, 1: waiting')
    level(giving, false)
    expect(giving.where()).toBe('told at left, g4, 1, 1: waiting')
    expect(found(giving)).toBe('4')
  })

  test('refused on the way, it has found nothing, says so, and its score has the reason', () => {
    const giving = begun()
    level(giving, true)
    const place = giving.view().step?.place ?? {}
    giving.do({ kind: 'closed', what: 'spacing', place, outcome: 'refused', reason: 'Enough' })
    expect(giving.where()).toBe('told at left, g4, 1, 1: waiting')
    expect(found(giving)).toBe('refused')
    expect(giving.view().rules).toEqual([
      {
        rule: 'smallest',
        place: { hand: 'right', spacing: 'g3', spacing_turn: 2 },
        did: 'nothing',
        text: '',
      },
    ])
  })

  test('never begun, it has a row with the outcome of the hand', () => {
    const giving = begun()
    giving.do({ kind: 'closed', what: 'hand', place: { hand: 'right' }, outcome: 'unable', reason: '' })
    expect(found(giving)).toBe('unable')
  })

  test('has found nothing while it is under way', () => {
    expect(found(level(begun(), true))).toBe('not_given')
  })

  test('a void touch is repeated at the same level', () => {
    const giving = begun()
    giving.do(giving.body('entered', { value: 1, confirmed: false })).press('voided')
    expect(giving.where()).toBe('told at right, g4, 1, 1: waiting')
  })

  test('undo of the last touch of a level gives back the level', () => {
    const giving = level(begun(), true).do({ kind: 'undone' })
    expect(giving.where()).toBe('told at right, g4, 1, 2: entered')
  })

  test('is named when a correction would have led elsewhere; what is found follows the corrected value', () => {
    const giving = level(level(begun(), true), false)
    const wrong = giving.view().trials.find(({ place }) => place.spacing === 'g4')?.id ?? ''
    giving.do({ kind: 'corrected', trial: wrong, column: 'value', value: 0, reason: 'Misheard' })
    expect(giving.view().wouldDiffer.map(({ rule }) => rule)).toEqual(['smallest'])
    expect(found(giving)).not.toBe('4')
  })

  test('shows its level as a pass whose end nobody knows', () => {
    const giving = level(begun(), true)
    expect(giving.view().step?.passes[1]).toMatchObject({ loop: 'spacing', id: 'g3', number: 2, of: null })
  })

  test('is rehearsed to the end', () => {
    for (const seed of [1, 2, 3, 4]) expect(rehearsed(ONE, seed).end).toBe('finished')
    expect(rehearsed(gaps('2'), 5).end).toBe('finished')
  })
})

const WEIGHTS = madeProtocol(
  `
  - ladder: heaviest
    over: loads
    level: load
    begin: light
    accepted: last(lifted.value) == 1
    moves: { accepted: up, failed: down }
    finds: greatest-accepted
    steps:
      - { measured: lifted, unit: "{count}", range: [0, 1] }
`,
  `
lists: { loads: [{ id: light, mass: 50 g }, { id: middle, mass: 100 g }, { id: heavy, mass: 200 g }] }
scores:
  - { score: most, value: only(heaviest.mass), unit: g, better: higher, decimals: 0 }
  - { score: which, value: "only(heaviest.id) == 'middle'", shown: false }
`,
)
const most = (...lifted: readonly number[]) => {
  const giving = begun(WEIGHTS)
  for (const one of lifted) giving.measure(one)
  expect(giving.where()).toBe('end')
  return scoreAll(giving.runner.standing(giving.administration)).map(
    ({ value, missing }) => value ?? missing?.code,
  )
}

describe('a ladder that looks for the greatest', () => {
  test('finds the last level that was accepted', () => {
    expect(most(1, 1, 0)).toEqual([100])
    expect(most(1, 1, 1)).toEqual([200])
  })

  test('finds nothing where not even the least was accepted: that is no zero', () => {
    expect(most(0)).toEqual(['limit'])
  })
})

const CHOSEN = (where: string, begin: string) =>
  madeProtocol(
    `
  - for-each: hand
    in: hands
    order: right-first
    steps:
      - ladder: coarse
        over: gaps
        level: rough
        where: rough.coarse
        begin: g4
        accepted: last(seen.value) == 1
        moves: { accepted: down, failed: up }
        finds: least-accepted
        steps: [{ measured: seen, unit: "{count}", range: [0, 1] }]
      - ladder: fine
        over: gaps
        level: spacing
        where: ${where}
        begin: ${begin}
        accepted: last(told.value) == 1
        moves: { accepted: down, failed: up }
        finds: least-accepted
        steps: [{ measured: told, unit: "{count}", range: [0, 1] }]
  - { position: after }
`,
    `
lists:
  gaps:
    - { id: g2, gap: 2 mm, coarse: true }
    - { id: g3, gap: 3 mm, coarse: false }
    - { id: g4, gap: 4 mm, coarse: true }
    - { id: g5, gap: 5 mm, coarse: false }
    - { id: g6, gap: 6 mm, coarse: true }
scores:
  - { score: rough_gap, each: hand, value: only(coarse.gap), unit: mm, better: lower, decimals: 0 }
  - { score: found, each: hand, value: only(fine.gap), unit: mm, better: lower, decimals: 0 }
`,
  )

describe('a ladder over some of the levels, from where an expression says', () => {
  const FROM = CHOSEN('spacing.gap <= only(coarse.gap)', '{ from: only(coarse.id) }')

  test('passes over what is left out, and begins where the first one ended', () => {
    const giving = begun(FROM)
    expect(giving.where()).toBe('seen at right, g4, 1: waiting')
    giving.measure(0)
    expect(giving.where()).toBe('seen at right, g6, 2: waiting')
    giving.measure(1)
    expect(giving.where()).toBe('told at right, g6, 1: waiting')
    giving.measure(1)
    expect(giving.where()).toBe('told at right, g5, 2: waiting')
    giving.measure(0)
    expect(giving.where()).toBe('seen at left, g4, 1: waiting')
    expect(found(giving)).toBe('6')
  })

  test('is beyond the last of the levels that there are, not of the list', () => {
    const giving = begun(FROM).measure(1).measure(0)
    expect(giving.where()).toBe('told at right, g4, 1: waiting')
    giving.measure(0)
    expect(giving.where()).toBe('seen at left, g4, 1: waiting')
    expect(found(giving)).toBe('≥ 4')
  })

  test('whose first level has no value gives nothing, says so, and its score has no value', () => {
    const giving = begun(FROM)
    const place = giving.view().step?.place ?? {}
    giving.do({ kind: 'closed', what: 'rough', place, outcome: 'refused', reason: 'Enough' })
    expect(giving.where()).toBe('seen at left, g4, 1: waiting')
    expect(giving.view().rules.filter(({ rule }) => rule === 'fine')).toContainEqual({
      rule: 'fine',
      place: { hand: 'right' },
      did: 'nothing',
      text: '',
    })
    expect(found(giving)).toBe('no_rows')
  })

  test('whose first level is left out gives nothing and says so', () => {
    const giving = begun(CHOSEN('spacing.gap < 4', 'g4')).measure(1).measure(0)
    expect(giving.where()).toBe('seen at left, g4, 1: waiting')
    expect(giving.view().rules).toEqual([
      { rule: 'fine', place: { hand: 'right' }, did: 'nothing', text: '' },
    ])
  })

  test('keeps a level that was given, whatever a correction makes of the condition', () => {
    const giving = begun(FROM).measure(0).measure(1).measure(1).measure(0)
    const coarse = giving.view().trials.find(({ place }) => place.rough === 'g4')?.id ?? ''
    giving.do({ kind: 'corrected', trial: coarse, column: 'value', value: 1, reason: 'Misheard' })
    expect(giving.view().wouldDiffer.map(({ rule }) => rule)).toContain('coarse')
    expect(found(giving)).toBe('6')
  })

  test('is rehearsed to the end', () => {
    for (const seed of [1, 2, 3, 4]) expect(rehearsed(FROM, seed).end).toBe('finished')
  })
})

describe('climbing', () => {
  test('always comes to an end, within the list, after no more turns than allowed', () => {
    const levels = ['a', 'b', 'c', 'd', 'e']
    assert(
      property(
        array(boolean(), { minLength: 40, maxLength: 40 }),
        integer({ min: 1, max: 4 }),
        constantFrom(...levels),
        (verdicts, turns, begin) => {
          const path = [begin]
          for (const accepted of verdicts) {
            const next = climb({ moves: { accepted: 'down', failed: 'up' } }, levels, path, accepted, turns)
            if (next === null) return
            expect(levels).toContain(next)
            path.push(next)
          }
          expect.unreachable(`no end after ${path.length} levels`)
        },
      ),
    )
  })
})
