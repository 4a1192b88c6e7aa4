import { describe, expect, test } from 'vitest'
import { buildResult } from '../../protocols/scoring/build-result.ts'
import { givenOf } from '../../protocols/scoring/given.ts'
import { scoreAll } from '../../protocols/scoring/scores.ts'
import { ADMINISTRATION, facts, Giving, madeProtocol } from './giving.ts'

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
          - { rated: quality, of: reach, scale: { 0: None, 1: Part, 2: Full }, highest: "last(reach.time) > 9 ? 1 : 2" }
          - { measured: angle, of: reach, unit: deg, range: [0, 90] }
  - { position: after }
`,
    `
lists: { tasks: [{ id: low }, { id: high }] }
raters: ${raters}
scores:
  - { score: by_rater, each: rater, value: sum(quality.grade), unit: "{score}", better: higher, decimals: 0 }
  - { score: joined, value: mean(by_rater), unit: "{score}", better: higher, decimals: 1 }
  - { score: time, value: sum(reach.time), unit: s, better: lower, decimals: 1 }
  - { score: turned, each: rater, value: sum(angle.value), unit: deg, better: higher, decimals: 0 }
`,
  )

const UNSEEN = protocolWith('{ count: 2, unseen: true, later: true }')
const SEEN = protocolWith('{ count: 2, later: true }')

const begun = (protocol = UNSEEN) => new Giving(protocol).begin(facts({ dominantBefore: 'right' }))

/** A grade and an angle, kept. */
const rate = (giving: Giving, grade: number) =>
  giving
    .do(giving.body('graded', { grade, reason: null }))
    .press('kept')
    .measure(grade * 10)

const putOff = (giving: Giving, rater = 'rater_2') => giving.do({ kind: 'put_off', rater })

/** Both tasks given and rated by the first; the second rates another day. */
function given(protocol = UNSEEN): Giving {
  const giving = putOff(rate(begun(protocol).time(3), 2))
  return rate(giving.time(10), 1).press('set').do({ kind: 'finished' })
}

const values = (giving: Giving) =>
  scoreAll(giving.runner.standing(giving.administration)).map(
    ({ score, place, value, missing }) =>
      `${[score.name, ...Object.values(place)].join(' ')} ${value ?? missing?.code}`,
  )

const toCome = (giving: Giving) => giving.view().raters.map(({ id, toCome: left }) => `${id} ${left}`)

const beginRating = (giving: Giving) => giving.do({ kind: 'rating_begun', rater: 'rater_2' })
/** Whether each row of a grade shows it. */
const shown = (giving: Giving) => giving.rows('quality').map((row) => /grade/.test(row))

describe('a rater who rates another day', () => {
  test('is put off once, and is passed over from there on; the test can be finished', () => {
    const giving = putOff(rate(begun().time(3), 2))
    expect(giving.where()).toBe('reach at high: waiting')
    rate(giving.time(10), 1)
    expect(giving.where()).toBe('after: waiting')
    giving.press('set').do({ kind: 'finished' })
    expect(giving.where()).toBe('finished')
    expect(giving.rows('quality').slice(1)).toEqual([
      'low rater_2 pending',
      'high rater_1 done',
      'high rater_2 pending',
    ])
    expect(toCome(giving)).toEqual(['rater_1 0', 'rater_2 4'])
  })

  test('may be put off only where the protocol says so, and only the one at hand', () => {
    const never = rate(begun(protocolWith('{ count: 2 }')).time(3), 2)
    expect(never.take({ kind: 'put_off', rater: 'rater_2' })).toBe('not_now')
    const giving = begun().time(3)
    expect(giving.take({ kind: 'put_off', rater: 'rater_2' })).toBe('wrong_place')
    expect(begun().take({ kind: 'put_off', rater: 'rater_1' })).toBe('not_now')
  })

  test('leaves scores without a value that need the grades, and says why; the others stand', () => {
    expect(values(given(SEEN))).toEqual([
      'by_rater rater_1 3',
      'by_rater rater_2 pending',
      'joined pending',
      'time 13',
      'turned rater_1 30',
      'turned rater_2 pending',
    ])
  })

  test('unseen by each other: nobody’s grades are shown or scored before all are given', () => {
    const giving = given()
    expect(values(giving)).toEqual([
      'by_rater rater_1 pending',
      'by_rater rater_2 pending',
      'joined pending',
      'time 13',
      'turned rater_1 pending',
      'turned rater_2 pending',
    ])
    expect(giving.rows('quality')[0]).toBe('low rater_1 done')
    const { administration, protocol, runner } = giving
    const result = buildResult({
      protocol,
      administration: givenOf(ADMINISTRATION, administration),
      standing: runner.standing(administration),
      earlier: [],
      verified: new Map(),
    })
    expect(result.complete).toBe(true)
    expect(JSON.stringify(result.trials.filter(({ step }) => step !== 'reach'))).not.toMatch(/"value":/)
  })

  test('gives them afterwards in the order of the test, each where it belongs, within the grades of that trial', () => {
    const giving = beginRating(given())
    expect(giving.where()).toBe('rating, quality at low, rater_2: waiting')
    expect(giving.view().progress).toEqual({ passed: 0, due: 4 })
    rate(giving, 1)
    expect(giving.where()).toBe('rating, quality at high, rater_2: waiting')
    expect(giving.take(giving.body('graded', { grade: 2, reason: null }))).toBe('above_highest')
    rate(giving, 0)
    expect(giving.where()).toBe('rating')
    expect(giving.view().offers.find(({ main }) => main)?.event).toBe('rating_ended')
    giving.do({ kind: 'rating_ended' })
    expect(giving.where()).toBe('finished')
    expect(giving.rows('quality')).toEqual([
      'low rater_1 done grade 2',
      'low rater_2 done grade 1',
      'high rater_1 done grade 1',
      'high rater_2 done grade 0',
    ])
    expect(values(giving)).toEqual([
      'by_rater rater_1 3',
      'by_rater rater_2 1',
      'joined 2',
      'time 13',
      'turned rater_1 30',
      'turned rater_2 10',
    ])
    expect(toCome(giving)).toEqual(['rater_1 0', 'rater_2 0'])
  })

  test('doesn’t see what the other gave while rating, unless the protocol lets it be seen', () => {
    expect(shown(beginRating(given()))).toEqual([false, false, false, false])
    expect(shown(beginRating(given(SEEN)))).toEqual([true, false, true, false])
  })

  test('is named with the day; the rest may wait for yet another', () => {
    const giving = beginRating(given())
    giving.wall += 5 * 3600
    rate(giving, 1).do({ kind: 'rating_ended' })
    expect(toCome(giving)).toEqual(['rater_1 0', 'rater_2 2'])
    beginRating(giving)
    expect(giving.where()).toBe('rating, quality at high, rater_2: waiting')
    const [first, second] = giving.view().raters[1]?.later ?? []
    expect([first?.by, second?.by]).toEqual(['Ida', 'Ida'])
    expect(first?.at.startsWith('2026-03-02T09')).toBe(true)
    expect(second?.at.startsWith('2026-03-02T14')).toBe(true)
  })

  test('may close what the recording doesn’t show: that is no grade and no zero', () => {
    const giving = beginRating(given(SEEN))
    const { step, place } = { step: 'quality', place: giving.view().step?.place ?? {} }
    giving.do({ kind: 'closed', what: step, place, outcome: 'not_given', reason: 'Out of the picture' })
    expect(giving.where()).toBe('rating, angle at low, rater_2: waiting')
    expect(giving.rows('quality')).toEqual([
      'low rater_1 done grade 2',
      'low rater_2 not_given',
      'high rater_1 done grade 1',
      'high rater_2 pending',
    ])
  })

  test('can take back a grade, and the beginning of rating; not the end of the test', () => {
    const giving = beginRating(given())
    rate(giving, 1).do({ kind: 'undone' })
    expect(giving.where()).toBe('rating, angle at low, rater_2: entered')
    giving.do({ kind: 'undone' }).do({ kind: 'undone' }).do({ kind: 'undone' }).do({ kind: 'undone' })
    expect(giving.where()).toBe('finished')
    expect(giving.take({ kind: 'undone' })).toBe('nothing_to_undo')
  })

  test('has nothing to rate of a trial that had no result, and nothing of a task that was refused', () => {
    const giving = putOff(rate(begun(SEEN).time(3), 2))
    const place = giving.view().step?.place ?? {}
    giving.do({ kind: 'closed', what: 'reach', place, outcome: 'refused', reason: 'Enough' })
    expect(giving.rows('quality').slice(1)).toEqual([
      'low rater_2 pending',
      'high rater_1 refused',
      'high rater_2 refused',
    ])
    expect(toCome(giving)).toEqual(['rater_1 0', 'rater_2 2'])
  })

  test('is there for a trial that is void and given again, once', () => {
    const giving = putOff(rate(begun().time(3), 2)).time(4)
    giving.do(giving.body('graded', { grade: 1, reason: null })).press('voided')
    expect(giving.where()).toBe('reach at high: waiting')
    rate(giving.time(5), 2)
    expect(giving.rows('quality').filter((row) => row.includes('rater_2'))).toEqual([
      'low rater_2 pending',
      'high rater_2 pending',
    ])
  })

  test('is put off again by the replay of the log, wherever it stands', () => {
    const giving = rate(beginRating(given()), 1)
    const again = giving.runner.replay(giving.log)
    expect(again.refused).toEqual([])
    expect(giving.runner.view(again.administration, ADMINISTRATION)).toEqual(giving.view())
  })

  test('offers rating only while something is to come, and only of a rater who has it', () => {
    const giving = given()
    expect(giving.take({ kind: 'rating_begun', rater: 'rater_1' })).toBe('nothing_to_rate')
    rate(rate(beginRating(giving), 1), 1).do({ kind: 'rating_ended' })
    expect(giving.view().offers.find(({ event }) => event === 'rating_begun')?.open).toBe(false)
  })
})
