import { describe, expect, test } from 'vitest'
import { arms, facts, type Giving, give } from './giving.ts'

const THING = 3
const LIKENESS = 2
const OTHER = 1
const NOTHING = 0

/** Both hands explore by themselves unless said otherwise; the right hand comes first and has set A. */
const begin = (conditions: Readonly<Record<string, string>> = {}): Giving =>
  give('stereognosis', { conditions })

/** Practice, and how the hand feels things. */
const ready = (given: Giving, way: 'explores' | 'moved' = 'explores'): Giving =>
  given.practised().answers(way)

/** A thing that is answered after so many seconds, in words where it isn't the thing. */
function thing(given: Giving, grade: number, seconds = 2): Giving {
  given.run(seconds).grades(grade)
  if (grade === OTHER || grade === LIKENESS) given.answers('hard and round')
  return given
}

const things = (given: Giving, grades: readonly number[], seconds = 2): Giving =>
  grades.reduce((so, grade) => thing(so, grade, seconds), given)

const TEN = Array<number>(10).fill(THING)

describe('ceiling', () => {
  test('all ten told by both hands: ten, as expected, and no z-score', () => {
    const given = things(ready(things(ready(begin()), TEN, 3)), TEN, 2)
    expect(given.step()).toBeNull()
    const scores = given.scores()
    expect([scores.value('told', 'right'), scores.value('told', 'left')]).toEqual([10, 10])
    expect([scores.value('time_per_thing', 'right'), scores.value('time_per_thing', 'left')]).toEqual([3, 2])
    const { strata } = scores.norm('expected', 'told', 'right')
    expect(strata).toMatchObject([{ figures: { band: 'As many as expected, 90 to 100 per cent' } }])
    expect(strata[0]?.z ?? null).toBeNull()
  })

  test('each hand has things of its own, each of them twice', () => {
    const given = things(ready(things(ready(begin()), TEN)), TEN)
    const rows = given.scores().trials.filter(({ step }) => step === 'touch')
    expect(new Set(rows.map(({ place }) => `${place.hand} ${place.set}`))).toEqual(
      new Set(['right a', 'left b']),
    )
    for (const hand of ['right', 'left']) {
      const given_to = rows.filter(({ place }) => place.hand === hand).map(({ place }) => String(place.pair))
      expect(given_to.sort()).toEqual(
        ['disc', 'disc', 'handle', 'handle', 'metal', 'metal', 'soft', 'soft', 'stick', 'stick'].sort(),
      )
    }
  })

  test('at the next visit the first hand can begin with the other set', () => {
    const given = ready(begin({ first_set: 'b' })).on()
    expect(given.step()?.place).toMatchObject({ hand: 'right', set: 'b' })
  })
})

describe('floor', () => {
  test('nothing told in three goes: asked, ended, the rest counts as not told', () => {
    const given = things(ready(begin()), [NOTHING, NOTHING])
    thing(given, NOTHING)
    expect(given.view().asking).toMatchObject({ rule: 'three_missed' })
    given.rules('three_missed', true)
    expect(given.step()?.place).toMatchObject({ hand: 'left' })
    const scores = given.scores()
    expect(scores.value('told', 'right')).toBe(0)
    expect(scores.value('not_told', 'right')).toBe(10)
    expect(scores.norm('expected', 'told', 'right').strata).toMatchObject([
      { figures: { band: 'Fewer than expected' } },
    ])
  })

  test('a hand that can’t hold a thing is closed: no number, and not 0', () => {
    const given = give('stereognosis', { facts: facts(arms('unaffected', 'affected')) })
    things(ready(given), TEN)
    given.on().closes('hand', 'unable')
    expect(given.step()).toBeNull()
    const scores = given.scores()
    expect(scores.value('told', 'right')).toBe(10)
    expect(scores.hands('told')).toEqual(['right', 'left'])
    expect(scores.value('told', 'left')).toBeNull()
    expect(scores.value('told_moved', 'left')).toBeNull()
  })
})

describe('awkward', () => {
  test('six told, two described, one mistaken, one not told in time: each kind of error is kept', () => {
    const given = ready(begin())
    things(given, [THING, THING, LIKENESS, THING, OTHER, THING, THING, LIKENESS, THING], 4)
    given.run(30).grades(NOTHING)
    const scores = given.scores()
    expect(scores.value('told', 'right')).toBe(6)
    expect(scores.value('only_described', 'right')).toBe(2)
    expect(scores.value('mistaken', 'right')).toBe(1)
    expect(scores.value('not_told', 'right')).toBe(1)
    expect(scores.value('written_down', 'right')).toBe(3)
    // By hand: nine answers of 4 s; the one that took 30 s has no time, and is no 30 s either.
    expect(scores.value('time_per_thing', 'right')).toBe(4)
  })

  test('what wasn’t told in time can’t be graded as told without a reason', () => {
    const given = ready(begin()).run(31)
    expect(given.refusal(() => given.grades(THING))).not.toBeNull()
    given.grades(NOTHING)
    expect(given.step()?.name).toBe('touch')
  })

  test('two missed, one told, two missed: nobody is asked whether to end', () => {
    const given = things(ready(begin()), [NOTHING, NOTHING, THING, NOTHING, NOTHING])
    expect(given.view().asking).toBeNull()
  })

  test('after “no” it goes on, and nothing is credited', () => {
    const given = things(ready(begin()), [NOTHING, NOTHING, NOTHING])
    given.rules('three_missed', false)
    expect(given.step()).toMatchObject({ name: 'touch', place: { hand: 'right' } })
    expect(given.scores().value('told', 'right')).toBeNull()
  })

  test('things moved in the hand by the examiner are another score, without the expectation', () => {
    const scores = things(ready(begin(), 'moved'), TEN).scores()
    expect(scores.value('told', 'right')).toBeNull()
    expect(scores.value('told_moved', 'right')).toBe(10)
    expect(scores.value('time_per_thing', 'right')).toBeNull()
  })

  test('a thing that fell is replaced in its place, at most twice, and its trial isn’t counted', () => {
    const given = ready(begin()).on()
    given.begins().voided('fell').begins().voided('gave_away')
    const scores = things(given, TEN).scores()
    expect(scores.value('told', 'right')).toBe(10)
    expect(scores.trials.filter(({ step, status }) => step === 'touch' && status === 'void')).toHaveLength(2)
  })

  test('a pair missed both times is seen from the outside', () => {
    const given = ready(begin())
    for (let each = 0; each < 10; each += 1) {
      given.on()
      thing(given, given.step()?.place.pair === 'metal' ? OTHER : THING)
    }
    expect(given.scores().each('told_of_pair', { hand: 'right' })).toEqual({
      disc: 2,
      stick: 2,
      metal: 0,
      handle: 2,
      soft: 2,
    })
  })
})
