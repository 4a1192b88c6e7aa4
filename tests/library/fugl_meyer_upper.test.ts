import { describe, expect, test } from 'vitest'
import { arms, facts, type Giving, give } from './giving.ts'

const begin = (conditions: Readonly<Record<string, string>> = {}, right = 'affected' as const): Giving =>
  give('fugl_meyer_upper', {
    facts: facts(arms(right, 'unaffected')),
    conditions: { phase: 'chronic', ...conditions },
  })

/** A movement each: the first try decides, a further one is declined. */
function moves(given: Giving, ...grades: readonly number[]): Giving {
  for (const grade of grades) {
    given.grades(grade)
    if (given.step()?.name === 'more') given.answers('enough')
  }
  return given
}

const twos = (count: number): number[] => Array.from({ length: count }, () => 2)

/** The last part: both times, then tremor and aim. */
const coordination = (given: Giving, beside: number, own: number, tremor = 2, aim = 2): Giving =>
  given.run(beside).run(own).grades(tremor).grades(aim)

/** Both reflexes are there; the first movement is at hand. */
const atRetraction = (): Giving => moves(begin(), 2, 2).on()

/** What stops the clock at the nose. */
const stopBy = (stopEvent: string): unknown =>
  moves(begin({ stop_event: stopEvent }), ...twos(30))
    .on()
    .step()?.face.stop

const RIGHT = { hand: 'right' }

test('ordinary: 33 items and 66 points, the affected arm alone', () => {
  const given = moves(begin(), ...twos(30))
  const scores = coordination(given, 4, 5.5).scores()
  expect(given.step()).toBeNull()
  expect(new Set(scores.trials.map(({ place }) => place.hand))).toEqual(new Set(['right']))
  expect(scores.each('points', RIGHT)).toEqual({
    reflexes: 4,
    flexors: 12,
    extensors: 6,
    mixing: 6,
    little: 6,
    normal: 2,
    wrist: 10,
    fingers: 14,
  })
  // 4 + 12 + 6 + 6 + 6 + 2 = 36; with 10, 14 and 6 that is 66; without 4 and 2 of reflexes 60.
  expect(scores.value('arm', 'right')).toBe(36)
  expect(scores.value('wrist', 'right')).toBe(10)
  expect(scores.value('hand_part', 'right')).toBe(14)
  expect(scores.value('coordination_points', 'right')).toBe(6)
  expect(scores.value('total', 'right')).toBe(66)
  expect(scores.value('without_reflexes', 'right')).toBe(60)
  const graded = scores.trials.filter(({ readings }) => readings.grade !== undefined)
  // 30 movements and reflexes, tremor, dysmetria; the time is the 33rd item.
  expect(graded).toHaveLength(32)
})

test('a partial arm, added up on paper', () => {
  // Reflexes 2+0, flexors 2+1+1+0+2+1, extensors 2+1+1, mixing 1+1+0, little 0+0+1, normal not tested,
  // wrist 1+1+0+0+1, hand 2+1+1+0+1+1+1.
  const given = moves(begin(), 2, 0, 2, 1, 1, 0, 2, 1, 2, 1, 1, 1, 1, 0, 0, 0, 1)
  expect(given.step()?.place).toMatchObject({ block: 'wrist', move: 'hold_bent' })
  moves(given, 1, 1, 0, 0, 1, 2, 1, 1, 0, 1, 1, 1)
  // 9.0 - 6.0 = 3.0 s slower: 1 point; tremor 1, aim 2.
  const scores = coordination(given, 6, 9, 1, 2).scores()
  expect(scores.value('arm', 'right')).toBe(16)
  expect(scores.value('wrist', 'right')).toBe(3)
  expect(scores.value('hand_part', 'right')).toBe(7)
  expect(scores.value('slower', 'right')).toBeCloseTo(3, 9)
  expect(scores.value('coordination_points', 'right')).toBe(4)
  expect(scores.value('total', 'right')).toBe(30)
  expect(scores.value('without_reflexes', 'right')).toBe(28)
})

/** Every movement and reflex is closed alike, and so are the five times to the nose. */
function closedThroughout(outcome: 'unable' | 'refused'): Giving {
  const given = begin()
  for (given.on(); given.step()?.name === 'graded'; ) given.closes('trial', outcome)
  return given.run(4).on().closes('trial', outcome)
}

test('tried and unable throughout is 0 of 66, as grade 0 says; refused has no total', () => {
  expect(closedThroughout('unable').scores().value('total', 'right')).toBe(0)
  const refused = closedThroughout('refused').scores()
  expect(refused.value('total', 'right')).toBeNull()
  expect(refused.why('total', 'right')).toBe('refused')
})

describe('reflexes', () => {
  test('are 0 or 2: a 1 is not taken', () => {
    const given = begin().on()
    expect(given.step()?.place).toMatchObject({ block: 'reflexes' })
    expect(() => given.grades(1)).toThrow('no_such_grade')
    expect(given.grades(2).step()?.place).toMatchObject({ move: 'reflex_extensors' })
  })

  test('beside the other side they count only after 6 of 6 before them; else they are 0, and not missing', () => {
    const tested = moves(begin(), ...twos(17))
    expect(tested.step()?.place).toMatchObject({ block: 'normal', move: 'reflexes_beside' })
    expect(moves(tested, 1).step()?.place).toMatchObject({ block: 'wrist' })
    const gated = moves(begin(), ...twos(16), 1)
    expect(gated.step()?.place).toMatchObject({ block: 'wrist' })
    expect(gated.noted()).toEqual(['gate'])
    const scores = coordination(moves(gated, ...twos(12)), 4, 5).scores()
    expect(scores.each('points', RIGHT)).toMatchObject({ little: 5, normal: 0 })
    // 66 less the 1 of the movement and the 2 of the reflexes.
    expect(scores.value('total', 'right')).toBe(63)
    expect(scores.trials.find(({ outcome }) => outcome === 'credited')?.place).toMatchObject({
      block: 'normal',
    })
  })
})

describe('tries', () => {
  test('the best of up to three counts', () => {
    const given = atRetraction().grades(1).answers('again').grades(2)
    expect(given.step()?.place).toMatchObject({ move: 'elevation' })
    const lower = atRetraction().grades(1).answers('again').grades(0).answers('again').grades(0)
    expect(lower.step()?.place).toMatchObject({ move: 'elevation' })
    const scores = coordination(moves(lower, ...twos(27)), 4, 5).scores()
    expect(scores.each('points', RIGHT)).toMatchObject({ flexors: 11 })
    expect(scores.value('total', 'right')).toBe(65)
  })

  test('a full grade on the first ends them, and another one may be declined', () => {
    expect(atRetraction().grades(2).step()?.place).toMatchObject({ move: 'elevation' })
    expect(atRetraction().grades(0).answers('enough').step()?.place).toMatchObject({ move: 'elevation' })
  })

  test('a further try that is refused takes nothing from the one before it', () => {
    const given = atRetraction().grades(1).answers('again').closes('trial', 'refused')
    expect(given.step()?.place).toMatchObject({ move: 'elevation' })
    expect(
      coordination(moves(given, ...twos(27)), 4, 5)
        .scores()
        .value('total', 'right'),
    ).toBe(65)
  })

  test('a helped one is void and given again, and is none of the three', () => {
    const given = atRetraction().voided('assisted')
    expect(given.step()).toMatchObject({ name: 'graded', place: { move: 'retraction', tries: 1 } })
  })
})

describe('time beside the unaffected arm', () => {
  test.each([
    [5.9, 2],
    [6, 1],
    [9, 1],
    [9.1, 0],
    [30, 0],
  ])('4 s there and %s s here: %i points', (seconds, points) => {
    const scores = coordination(moves(begin(), ...twos(30)), 4, seconds).scores()
    expect(scores.value('speed', 'right')).toBe(points)
    expect(scores.value('total', 'right')).toBe(64 + points)
  })

  test('no movement to the nose is 0 for tremor, aim and time', () => {
    const given = moves(begin(), ...twos(30))
      .run(4)
      .closes('trial', 'unable')
    expect(given.step()).toBeNull()
    const scores = given.scores()
    expect(scores.value('coordination_points', 'right')).toBe(0)
    expect(scores.value('total', 'right')).toBe(60)
    expect(scores.value('slower', 'right')).toBeNull()
  })

  test('with both arms affected there is no side to compare with: no time, no total', () => {
    const given = give('fugl_meyer_upper', {
      facts: facts(arms('affected', 'less_affected')),
      conditions: { phase: 'chronic' },
    })
    const scores = moves(given, ...twos(30))
      .run(5)
      .grades(2)
      .grades(2)
      .scores()
    expect(scores.value('arm', 'left')).toBe(36)
    expect(scores.value('speed', 'left')).toBeNull()
    expect(scores.value('total', 'left')).toBeNull()
  })

  test('where the clock stops is the clinic’s: the fifth return, or the fifth touch', () => {
    expect(stopBy('fifth_return')).toMatchObject({ text: 'The fifth return to the knee.' })
    expect(stopBy('fifth_touch')).toMatchObject({ text: 'The fifth touch of the nose.' })
  })
})

test.each(['refused', 'not_allowed', 'not_given'] as const)(
  'an item %s is no 0: its part and the total have no value, the other parts do',
  (outcome) => {
    const given = moves(begin(), 2, 2).on().closes('trial', outcome)
    const scores = coordination(moves(given, ...twos(27)), 4, 5).scores()
    expect(scores.value('arm', 'right')).toBeNull()
    expect(scores.value('total', 'right')).toBeNull()
    expect(scores.why('total', 'right')).toBe(outcome)
    expect(scores.value('wrist', 'right')).toBe(10)
  },
)

test('with no arm affected nothing is given', () => {
  const given = give('fugl_meyer_upper', { facts: facts(), conditions: { phase: 'not_stroke' } })
  expect(given.on().step()).toBeNull()
})
