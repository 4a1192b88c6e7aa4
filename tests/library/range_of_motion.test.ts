import { describe, expect, test } from 'vitest'
import { arms, facts, type Giving, give } from './giving.ts'
import type { Occasion } from './log-book.ts'

const REGIONS = ['shoulder_back', 'shoulder', 'elbow', 'forearm', 'wrist', 'thumb'] as const
const FINGERS = ['index', 'middle', 'ring', 'little'] as const
const RIGHT_ALONE = facts(arms('affected', 'absent'))

/** Only these regions and fingers are wanted; goes up to the first reading. */
function wanted(name: string, occasion: Occasion = {}): Giving {
  const given = give('range_of_motion', {
    ...occasion,
    conditions: { ways: 'active', instrument: 'goniometer', ...occasion.conditions },
  })
  for (const each of [...REGIONS, ...FINGERS]) {
    given.answers(each === name ? 'yes' : 'no')
    if (each === name) return given.on()
  }
  return given
}

/** Nothing more is wanted. */
function nothingMore(given: Giving): Giving {
  while (given.on().step()?.name.endsWith('wanted')) given.answers('no')
  return given
}

/** An angle, and how it ended. */
const angle = (given: Giving, degrees: number, end = 'own'): Giving => given.fills(degrees).fills(end)

const active = (given: Giving, region: string, hand = 'right') =>
  given.scores().each('active_range', { hand, region })

describe('ceiling', () => {
  test('an elbow that goes beyond straight: above 0, and the arc from there', () => {
    const given = wanted('elbow', { facts: RIGHT_ALONE })
    angle(angle(given, 146), 5)
    expect(active(given, 'elbow')).toEqual({ elbow_flexion: 146, elbow_extension: 5 })
    // By hand: 146 + 5.
    expect(given.scores().value('elbow_arc', 'right')).toBe(151)
  })

  test('a finger that goes beyond straight gains nothing by it in its total', () => {
    const given = wanted('index', { facts: RIGHT_ALONE })
    for (const degrees of [90, 20, 100, 5, 80, 0]) angle(given, degrees)
    const scores = given.scores()
    expect(scores.each('finger_active_range', { side: 'right', finger: 'index' })).toMatchObject({
      mcp_flexion: 90,
      mcp_extension: 20,
    })
    // By hand: 90 + 100 + 80, with nothing lacking.
    expect(scores.each('total_active', { side: 'right' }).index).toBe(270)
  })
})

describe('floor', () => {
  test('an elbow from 10 to 120 is extension -10 and flexion 120: an arc of 110', () => {
    const given = wanted('elbow', { facts: RIGHT_ALONE })
    angle(angle(given, 120), -10)
    expect(active(given, 'elbow')).toEqual({ elbow_flexion: 120, elbow_extension: -10 })
    expect(given.scores().value('elbow_arc', 'right')).toBe(110)
  })

  test('a finger that lacks 30 and 15 degrees to straight loses them in its total', () => {
    const given = wanted('little', { facts: RIGHT_ALONE })
    for (const degrees of [70, 10, 80, -30, 40, -15]) angle(given, degrees)
    // By hand: 70 + 80 + 40 - 30 - 15.
    expect(given.scores().each('total_active', { side: 'right' }).little).toBe(145)
  })

  test('a stiff joint has no range and is no 0: its angle is kept beside', () => {
    const given = wanted('elbow', { facts: RIGHT_ALONE })
    angle(angle(given, 50, 'stiff'), -50)
    const scores = given.scores()
    expect(active(given, 'elbow')).toEqual({ elbow_flexion: null, elbow_extension: -50 })
    expect(scores.each('active_stopped', { hand: 'right', region: 'elbow' })).toMatchObject({
      elbow_flexion: 50,
    })
    expect(scores.value('elbow_arc', 'right')).toBeNull()
  })
})

describe('awkward', () => {
  test('an angle that pain ended meets no table and no total', () => {
    const given = wanted('index', { facts: RIGHT_ALONE })
    angle(given, 90)
    angle(given, 0)
    angle(given, 60, 'pain')
    for (const degrees of [0, 80, 0]) angle(given, degrees)
    const scores = given.scores()
    const at = { side: 'right', finger: 'index' }
    expect(scores.each('finger_active_range', at)).toMatchObject({ pip_flexion: null, mcp_flexion: 90 })
    expect(scores.each('finger_active_stopped', at)).toMatchObject({ pip_flexion: 60, mcp_flexion: null })
    expect(scores.each('total_active', { side: 'right' }).index).toBeNull()
  })

  test('active and passive are two scores: what is free when moved and lost when tried shows as two numbers', () => {
    const given = wanted('elbow', { facts: RIGHT_ALONE, conditions: { ways: 'both' } })
    angle(angle(given, 40), -20)
    expect(given.cell()?.step).toBe('passive')
    angle(angle(given, 140, 'soft'), -5, 'firm')
    const scores = given.scores()
    expect(active(given, 'elbow')).toEqual({ elbow_flexion: 40, elbow_extension: -20 })
    expect(scores.each('passive_range', { hand: 'right', region: 'elbow' })).toEqual({
      elbow_flexion: 140,
      elbow_extension: -5,
    })
  })

  test('an empty end feel is no range', () => {
    const given = wanted('elbow', { facts: RIGHT_ALONE, conditions: { ways: 'passive' } })
    angle(angle(given, 100, 'empty'), 0, 'hard')
    const scores = given.scores()
    const at = { hand: 'right', region: 'elbow' }
    expect(scores.each('passive_range', at)).toEqual({ elbow_flexion: null, elbow_extension: 0 })
    expect(scores.each('passive_stopped', at)).toEqual({ elbow_flexion: 100, elbow_extension: null })
  })

  test('what isn’t wanted is not asked for and leaves no gap', () => {
    const given = wanted('forearm', { facts: RIGHT_ALONE })
    angle(angle(given, 75), 80)
    nothingMore(given)
    expect(given.step()).toBeNull()
    const scores = given.scores()
    expect(
      scores.trials
        .filter(({ step, place }) => step === 'active' && place.hand === 'right')
        .map(({ place }) => place.motion),
    ).toEqual(['forearm_pronation', 'forearm_supination'])
    expect(scores.value('forearm_arc', 'right')).toBe(155)
    expect(scores.value('elbow_arc', 'right')).toBeNull()
  })

  test('a motion that isn’t allowed, and one that can’t be done, are no zeros', () => {
    const given = wanted('elbow', { facts: RIGHT_ALONE })
    // Without an angle nothing ended it.
    given.closesCell('not_allowed').closesCell('not_allowed').closesCell('unable').closesCell('unable')
    expect(active(given, 'elbow')).toEqual({ elbow_flexion: null, elbow_extension: null })
  })

  test('a reading for which the trunk joined in is read anew', () => {
    const given = wanted('elbow', { facts: RIGHT_ALONE })
    given.fills(150).voidsCell('trunk_joined')
    angle(angle(given, 120), 0)
    expect(active(given, 'elbow')).toEqual({ elbow_flexion: 120, elbow_extension: 0 })
  })

  test('the less affected arm first; both in one position', () => {
    const given = wanted('elbow', { facts: facts(arms('affected', 'unaffected')) })
    expect(given.cell()?.place).toMatchObject({ hand: 'left', motion: 'elbow_flexion' })
    angle(angle(given, 140), 0)
    expect(given.cell()?.place).toMatchObject({ hand: 'right', motion: 'elbow_flexion' })
  })

  test('an angle of the wrong sign by far is asked for again', () => {
    const given = wanted('elbow', { facts: RIGHT_ALONE })
    angle(given, 120)
    expect(given.cell()?.place.motion).toBe('elbow_extension')
    expect(given.refusal(() => given.fills(-120))).toBe('out_of_range')
  })
})
