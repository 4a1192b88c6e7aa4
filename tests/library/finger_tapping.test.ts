import { describe, expect, test } from 'vitest'
import { type Giving, give } from './giving.ts'

/** Practice that is understood at once, then trials with so many taps. */
function series(given: Giving, ...counts: readonly number[]): Giving {
  given.practised().answers('yes')
  for (const count of counts) given.taps(count)
  return given
}

const FIVE = [50, 52, 51, 53, 55] as const

test('ordinary: five trials within five taps end the series; the other hand follows', () => {
  const given = series(give('finger_tapping'), ...FIVE)
  expect(given.step()?.place.hand).toBe('left')
  const scores = series(given, 46, 46, 47, 48, 47).scores()
  expect(scores.order).toEqual({ items: ['right', 'left'], rule: 'dominant-first' })
  // 261 / 5 and 234 / 5.
  expect(scores.value('taps_key', 'right')).toBeCloseTo(52.2, 9)
  expect(scores.value('taps_key', 'left')).toBeCloseTo(46.8, 9)
  expect(scores.value('agreed', 'right')).toBe(5)
  // Last 55 less first 50; trials 3 to 5 are 51, 53, 55.
  expect(scores.value('tiring', 'right')).toBe(5)
  expect(scores.value('third_to_fifth', 'right')).toBeCloseTo(53, 9)
  // Squares of -2.2, -0.2, -1.2, 0.8, 2.8 add up to 14.8; over 4 that is 3.7.
  expect(scores.value('spread_of_trials', 'right')).toBeCloseTo(Math.sqrt(3.7), 9)
  expect(scores.value('side_ratio')).toBeCloseTo((52.2 - 46.8) / 52.2, 9)
})

describe('five consecutive trials within five taps', () => {
  test('the window slides: trials 2 to 6 agree where 1 to 5 do not', () => {
    const given = series(give('finger_tapping'), 40, 50, 51, 52, 53)
    expect(given.step()?.place).toMatchObject({ hand: 'right', series: 6 })
    given.taps(54)
    expect(given.step()?.place.hand).toBe('left')
    const scores = given.scores()
    expect(scores.value('agreed', 'right')).toBe(6)
    expect(scores.value('taps_key', 'right')).toBeCloseTo(52, 9)
  })

  test('a range of exactly five agrees, of six does not', () => {
    expect(series(give('finger_tapping'), 50, 51, 52, 53, 55).step()?.place.hand).toBe('left')
    expect(series(give('finger_tapping'), 50, 51, 52, 53, 56).step()?.place.hand).toBe('right')
  })

  test('a void trial among them neither breaks the run nor counts against the ten', () => {
    const given = series(give('finger_tapping'), 50, 51)
    given.on().begins().voided('whole_hand')
    given.taps(52).taps(53).taps(54)
    expect(given.step()?.place.hand).toBe('left')
    const scores = given.scores()
    expect(scores.value('agreed', 'right')).toBe(5)
    expect(scores.value('taps_key', 'right')).toBeCloseTo(52, 9)
    const statuses = scores.trials.filter(({ step }) => step === 'taps').map(({ status }) => status)
    expect(statuses).toEqual(['standing', 'standing', 'void', 'standing', 'standing', 'standing'])
  })

  test.each([
    ['best_five', 50],
    ['all', 45],
  ])('ten trials that never agree, by the rule %s', (unsteady, mean) => {
    const wild = [40, 50, 40, 50, 40, 50, 40, 50, 40, 50]
    const given = series(give('finger_tapping', { conditions: { unsteady, begins: 'go' } }), ...wild)
    expect(given.step()?.place.hand).toBe('left')
    expect(given.scores().value('taps_key', 'right')).toBeCloseTo(mean, 9)
  })
})

test('at least fifteen seconds between the trials, a minute after the third', () => {
  expect(series(give('finger_tapping'), ...FIVE).rests).toEqual([15, 15, 60, 15])
})

test('practice is repeated until it is understood, and never counts', () => {
  const given = give('finger_tapping').practised().answers('no')
  expect(given.step()).toMatchObject({ name: 'try_out', practice: true })
  const scores = series(given, ...FIVE).scores()
  expect(scores.value('agreed', 'right')).toBe(5)
})

test('a bounce within 40 ms is no tap', () => {
  const given = give('finger_tapping').practised().answers('yes').begins()
  given.presses('tapped', 100)
  expect(() => given.presses('tapped', 39)).toThrow('bounce')
})

test('no tap in a true attempt is a real 0, and is noted', () => {
  const given = series(give('finger_tapping'), 0, 0, 0, 0, 0)
  expect(given.noted()).toContain('no_tap')
  expect(given.scores().value('taps_key', 'right')).toBe(0)
})

test('unable has no value and is no zero; the ratio of the sides goes with it', () => {
  const given = give('finger_tapping').practised().answers('yes').closes('hand', 'unable')
  const scores = series(given, ...FIVE).scores()
  expect(scores.value('taps_key', 'right')).toBeNull()
  expect(scores.why('taps_key', 'right')).toBe('unable')
  expect(scores.value('taps_key', 'left')).toBeCloseTo(52.2, 9)
  expect(scores.value('side_ratio')).toBeNull()
})
