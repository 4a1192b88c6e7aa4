import { describe, expect, test } from 'vitest'
import { arms, facts, give } from './giving.ts'

/** Both hands in turn, three times. */
const sixReadings = (readings: readonly number[], giving = give('grip_strength').practised()) =>
  readings.reduce((given, value) => given.reads(value), giving)

test('ordinary: mean and highest of three stand side by side, hands in turn', () => {
  const given = sixReadings([30, 28, 32, 27.5, 31, 29])
  expect(given.step()).toBeNull()
  const scores = given.scores()
  expect(scores.value('mean_of_3', 'right')).toBeCloseTo(31, 12)
  expect(scores.value('mean_of_3', 'left')).toBeCloseTo(84.5 / 3, 12)
  expect(scores.value('highest_of_3', 'right')).toBe(32)
  expect(scores.value('highest_of_3', 'left')).toBe(29)
  expect(scores.value('highest_of_both')).toBe(32)
  expect(scores.why('highest_of_fewer', 'right')).toBe('needs_not_met')
  expect(scores.trials.filter(({ practice }) => !practice).map(({ place }) => place.hand)).toEqual([
    'right',
    'left',
    'right',
    'left',
    'right',
    'left',
  ])
})

test('each hand gives one gentle squeeze first, which never counts', () => {
  const given = give('grip_strength').on()
  expect(given.step()).toMatchObject({ name: 'try_out', practice: true, place: { warming: 'right' } })
  const scores = sixReadings([30, 28, 32, 27.5, 31, 29]).scores()
  expect(scores.trials.filter(({ practice }) => practice).map(({ place }) => place.warming)).toEqual([
    'right',
    'left',
  ])
})

test('15 s lie between two squeezes of one hand, counted from that hand’s own, and none before the first', () => {
  const given = give('grip_strength').practised()
  expect(given.step()?.name).toBe('squeeze')
  const rests = sixReadings([30, 28, 32, 27.5, 31, 29])
    .scores()
    .log.filter(({ body }) => body.kind === 'rest.over')
  expect(rests).toHaveLength(4)
})

test('ceiling: beyond 100 kgf is asked again', () => {
  expect(() => give('grip_strength').practised().reads(900)).toThrow('out_of_range')
  expect(sixReadings([90, 90, 90, 90, 90, 90]).scores().value('mean_of_3', 'right')).toBe(90)
})

describe('floor', () => {
  test('a hand too weak to move the needle is 0 kgf in every squeeze, which is a score', () => {
    const given = give('grip_strength', { facts: facts(arms('unaffected', 'affected')) }).practised()
    const scores = given.reads(30).closes('hand', 'unable').reads(31).reads(32).scores()
    expect(given.step()).toBeNull()
    expect(scores.value('mean_of_3', 'right')).toBeCloseTo(31, 12)
    expect(scores.value('mean_of_3', 'left')).toBe(0)
    expect(scores.value('highest_of_3', 'left')).toBe(0)
    expect(scores.value('highest_of_both')).toBe(32)
  })
})

describe('awkward', () => {
  test('a void squeeze is given again after the rest and only then counts', () => {
    const given = give('grip_strength').practised().voided('braced')
    const scores = sixReadings([30, 28, 32, 27.5, 31, 29], given).scores()
    expect(scores.value('mean_of_3', 'right')).toBeCloseTo(31, 12)
    expect(scores.trials.filter(({ status }) => status === 'void')).toHaveLength(1)
  })

  test('refused after one squeeze: no mean, the one given is labelled as what it is', () => {
    const given = give('grip_strength')
      .practised()
      .reads(30)
      .reads(25)
      .reads(32)
      .closes('hand', 'refused')
      .reads(31)
    const scores = given.scores()
    expect(given.step()).toBeNull()
    expect(scores.value('mean_of_3', 'right')).toBeCloseTo(31, 12)
    expect(scores.value('mean_of_3', 'left')).toBeNull()
    expect(scores.value('highest_of_3', 'left')).toBeNull()
    expect(scores.value('highest_of_fewer', 'left')).toBe(25)
    expect(scores.value('highest_of_both')).toBeNull()
  })

  test('not allowed is no zero, and the hand isn’t asked for again', () => {
    const given = give('grip_strength').on().closes('warming', 'not_allowed').practised()
    const scores = given.reads(25).reads(26).reads(27).scores()
    expect(given.step()).toBeNull()
    expect(scores.value('mean_of_3', 'left')).toBeCloseTo(26, 12)
    expect(scores.value('mean_of_3', 'right')).toBeNull()
    expect(scores.why('mean_of_3', 'right')).toBe('not_allowed')
  })

  test('the unaffected hand begins; with none affected the dominant one, here the left', () => {
    const stroke = give('grip_strength', { facts: facts(arms('affected', 'unaffected')) })
    expect(sixReadings([20, 5, 21, 6, 22, 7], stroke.practised()).scores()).toMatchObject({
      order: { items: ['left', 'right'], rule: 'unaffected-first' },
    })
    const leftHander = give('grip_strength', { facts: facts({ dominantBefore: 'left' }) })
    expect(sixReadings([20, 5, 21, 6, 22, 7], leftHander.practised()).scores().order).toEqual({
      items: ['left', 'right'],
      rule: 'dominant-first',
    })
  })

  test('an absent arm is left out; nothing is said of both hands', () => {
    const given = give('grip_strength', { facts: facts(arms('absent', 'unaffected')) }).practised()
    const scores = given.reads(25).reads(26).reads(27).scores()
    expect(given.step()).toBeNull()
    expect(scores.value('mean_of_3', 'left')).toBeCloseTo(26, 12)
    expect(scores.why('mean_of_3', 'right')).toBe('absent')
    expect(scores.value('highest_of_both')).toBeNull()
  })
})

test('a mean of three waits for the third squeeze', () => {
  const scores = give('grip_strength').practised().reads(30).reads(28).reads(32).scores()
  expect(scores.value('mean_of_3', 'right')).toBeNull()
  expect(scores.why('mean_of_3', 'right')).toBe('needs_not_met')
})

test('a hand gets two extra squeezes for void ones, over all three rounds', () => {
  const given = give('grip_strength').practised()
  given.voided('braced').reads(30).reads(28)
  given.voided('jerked').reads(31).reads(29)
  given.voided('slipped').on()
  const scores = given.reads(27).scores()
  expect(given.step()).toBeNull()
  expect(scores.why('mean_of_3', 'right')).toBe('not_given')
  expect(scores.value('highest_of_fewer', 'right')).toBe(31)
  expect(scores.value('mean_of_3', 'left')).toBeCloseTo(28, 12)
})

const BORN = { birth: { known: 'date', date: '1991-06-15' }, sex: 'M' } as const
const HYDRAULIC = { instrument: 'hydraulic' }
const with31 = (about: Parameters<typeof facts>[0], conditions: Readonly<Record<string, string>>) =>
  sixReadings(
    [30, 28, 32, 28, 31, 28],
    give('grip_strength', { facts: facts(about), conditions }).practised(),
  ).scores()

describe('what the tables say', () => {
  test('seated, hydraulic, second position: the tables gathered so are used, the standing one under a caution', () => {
    const scores = with31(BORN, HYDRAULIC)
    expect(scores.norm('adults_1985', 'mean_of_3', 'right')).toMatchObject({
      status: 'used',
      standing: 'memory',
    })
    expect(scores.norm('adults_2011', 'mean_of_3', 'right')).toMatchObject({ status: 'used' })
    const standing = scores.norm('survey_2013_mean', 'mean_of_3', 'right')
    expect(standing.status).toBe('used')
    const differ = standing.caution.filter(({ code }) => code === 'condition_differs')
    expect(differ.map(({ detail }) => detail.condition)).toEqual(['instrument', 'handle', 'posture'])
  })

  test('34 years on the day: the row of 30 to 34, in kilogram-force', () => {
    // Memory: 1985, men of 30 to 34, left: 110.4 lbf (21.7), n 27; 28 kgf is (28 - 50.0766) / 9.8430 SD away.
    const [row] = with31(BORN, HYDRAULIC).norm('adults_1985', 'mean_of_3', 'left').strata
    expect(row).toMatchObject({ ageMin: 30, ageMax: 34, hand: 'left', n: 27 })
    expect(row?.z).toBeCloseTo((28 - 110.4 * 0.45359237) / (21.7 * 0.45359237), 9)
  })

  test.each([
    ['another handle position', { ...HYDRAULIC, handle: 'third' }],
    ['a spring dynamometer', { instrument: 'spring' }],
    ['standing', { ...HYDRAULIC, posture: 'standing_straight' }],
  ])('%s takes the hydraulic, seated tables away and leaves the others', (_what, conditions) => {
    const scores = with31(BORN, conditions)
    for (const norm of ['adults_1985', 'adults_2011']) {
      expect(scores.norm(norm, 'mean_of_3', 'right').status).toBe('withheld')
    }
    expect(scores.norm('survey_2013_mean', 'mean_of_3', 'right').status).toBe('used')
  })

  test('with the sex unknown both rows stand there, none is guessed', () => {
    const norm = with31({ birth: BORN.birth }, HYDRAULIC).norm('adults_1985', 'mean_of_3', 'right')
    expect(norm.status).toBe('several')
    expect(norm.strata.map(({ sex }) => sex)).toEqual(['M', 'F'])
  })
})
