import { describe, expect, test } from 'vitest'
import { arms, facts, type Giving, give } from './giving.ts'

const FINE = ['cutlery', 'cups', 'pegs', 'eggs'] as const
const ARM = ['curtain', 'drawers', 'wiping', 'towels', 'stirring'] as const
const LEAVES = ['curtain', 'drawers', 'wiping', 'towels']

/** One hand's turn at the task at hand: the try, then the run that counts, and what it left undone. */
function turn(given: Giving, seconds: number, left = 0): Giving {
  given.on().run(3)
  const task = String(given.step()?.place.task)
  given.run(seconds)
  return LEAVES.includes(task) ? given.reads(left) : given
}

/** All nine tasks, the hands in turn, each task so many seconds for the first hand and the second. */
const nine = (given: Giving, first: number, second: number): Giving =>
  [...FINE, ...ARM].reduce((so) => turn(turn(so, first), second), given)

/** The right hand alone, through the eight tasks after the first. */
const rest = (given: Giving): Giving => [...FINE, ...ARM].slice(1).reduce((so) => turn(so, 10), given)

const alone = (): Giving => give('household_tasks', { facts: facts(arms('unaffected', 'absent')) })

const begin = (conditions: Readonly<Record<string, string>> = {}): Giving =>
  give('household_tasks', { conditions })

describe('ceiling', () => {
  test('both hands finish everything: sums of seconds, no errors, the ratio of the hands', () => {
    const given = nine(begin(), 10, 12)
    given.on()
    expect(given.step()?.name).toBe('wring')
    given.run(20).reads(120)
    expect(given.step()).toBeNull()
    const scores = given.scores()
    // By hand: nine tasks of 10 s and of 12 s; four of them are fine hand use, five hand and arm use.
    expect([scores.value('total_time', 'right'), scores.value('total_time', 'left')]).toEqual([90, 108])
    expect(scores.each('action_time', { hand: 'right' })).toEqual({ fine: 40, arm: 50 })
    expect(scores.value('total_errors', 'right')).toBe(0)
    expect(scores.value('finished', 'left')).toBe(9)
    expect(scores.value('ratio')).toBeCloseTo(1.2, 12)
    expect([scores.value('wring_time'), scores.value('water')]).toEqual([20, 120])
    expect(scores.value('curtain_left', 'right')).toBe(0)
    // The tasks come in the order of the actions, each for one hand and then the other.
    const rows = scores.trials.filter(({ step }) => step === 'run')
    expect(rows.map(({ place }) => `${place.task} ${place.hand}`)).toEqual(
      [...FINE, ...ARM].flatMap((task) => [`${task} right`, `${task} left`]),
    )
    expect(rows.map(({ place }) => place.action)).toEqual([
      ...Array<string>(8).fill('fine'),
      ...Array<string>(10).fill('arm'),
    ])
  })

  test('where a clinic gives two runs the time is their mean', () => {
    const given = begin({ runs: '2' }).on()
    given.run(3).run(10).run(14)
    expect(given.scores().each('time', { hand: 'right', action: 'fine' })).toMatchObject({ cutlery: 12 })
  })
})

describe('floor', () => {
  test('a task that isn’t finished: at least 120 s, with the pieces done, and a total of at least that', () => {
    const given = alone().on()
    given.run(3).limited('pieces', 4)
    rest(given)
    const scores = given.scores()
    expect(scores.each('time', { hand: 'right', action: 'fine' })).toMatchObject({ cutlery: 120, cups: 10 })
    expect(scores.over('time', { hand: 'right', action: 'fine', task: 'cutlery' })).toBe(true)
    expect(scores.each('pieces_done', { hand: 'right', action: 'fine' })).toMatchObject({ cutlery: 4 })
    // By hand: 120 + 8 x 10 = 200, and at least that.
    expect(scores.value('total_time', 'right')).toBe(200)
    expect(scores.over('total_time', { hand: 'right' })).toBe(true)
    expect(scores.value('finished', 'right')).toBe(8)
    expect(scores.over('action_time', { hand: 'right', action: 'arm' })).toBe(false)
  })

  test('nobody does more pieces than there are', () => {
    const given = begin().on().run(3)
    expect(given.refusal(() => given.limited('pieces', 7))).toBe('more_than_all')
  })

  test('a hand that can’t begin a task has no time there, no total, and no 120 s', () => {
    const given = alone().on()
    given.run(3).begins().closes('trial', 'unable')
    rest(given)
    const scores = given.scores()
    expect(scores.each('time', { hand: 'right', action: 'fine' })).toMatchObject({ cutlery: null, cups: 10 })
    expect(scores.value('total_time', 'right')).toBeNull()
    expect(scores.each('action_time', { hand: 'right' })).toEqual({ fine: null, arm: 50 })
  })
})

describe('awkward', () => {
  test('what falls, lies wrong or is knocked over is an error; a leaning trunk is counted beside them', () => {
    const given = alone().on()
    given.run(3).begins()
    given.happens('dropped').happens('outside').happens('outside').happens('knocked').happens('leaned')
    given.stops(15)
    rest(given)
    const scores = given.scores()
    expect(scores.each('errors', { hand: 'right', action: 'fine' })).toMatchObject({ cutlery: 4, cups: 0 })
    expect(scores.each('action_errors', { hand: 'right' })).toEqual({ fine: 4, arm: 0 })
    expect(scores.value('total_errors', 'right')).toBe(4)
    expect(scores.value('trunk', 'right')).toBe(1)
    // No error adds to the time.
    expect(scores.each('time', { hand: 'right', action: 'fine' })).toMatchObject({ cutlery: 15 })
  })

  test('a run in which the other hand helped is given again, and counts nowhere', () => {
    const given = begin().on()
    given.run(3).begins().happens('dropped').voided('other_hand')
    given.run(11)
    const scores = given.scores()
    expect(scores.each('time', { hand: 'right', action: 'fine' })).toMatchObject({ cutlery: 11 })
    expect(scores.each('errors', { hand: 'right', action: 'fine' })).toMatchObject({ cutlery: 0 })
  })

  test('what a task leaves undone is read in centimetres, in these four tasks alone', () => {
    const given = alone()
    for (const _ of FINE) turn(given, 10)
    for (const left of [12, 3, 25, 4]) turn(given, 10, left)
    turn(given, 10)
    const scores = given.scores()
    const left = ['curtain_left', 'drawers_left', 'lines_left', 'towel_over']
    expect(left.map((score) => scores.value(score, 'right'))).toEqual([12, 3, 25, 4])
  })

  test('a client with one arm: nine tasks with it, no ratio, and no wringing', () => {
    const given = rest(turn(alone(), 10))
    given.on().closes('trial', 'absent')
    expect(given.step()).toBeNull()
    const scores = given.scores()
    expect(scores.value('total_time', 'right')).toBe(90)
    expect(scores.value('ratio')).toBeNull()
    expect(scores.value('wring_time')).toBeNull()
  })

  test('wringing that takes too long is at least 120 s, and what is in the jug still counts', () => {
    const scores = rest(turn(alone(), 10)).on().run(120).reads(40).scores()
    expect(scores.value('wring_time')).toBe(120)
    expect(scores.over('wring_time', {})).toBe(true)
    expect(scores.value('water')).toBe(40)
  })
})
