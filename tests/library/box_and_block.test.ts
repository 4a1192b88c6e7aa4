import { describe, expect, test } from 'vitest'
import { arms, facts, give } from './giving.ts'

test('ordinary: a quarter minute of practice, then a minute a hand; the end count is the score', () => {
  const scores = give('box_and_block').practised().window(63, 64).practised().window(61, 61).scores()
  expect(scores.order).toEqual({ items: ['right', 'left'], rule: 'dominant-first' })
  expect(scores.value('blocks', 'right')).toBe(63)
  expect(scores.value('taps_beyond_count', 'right')).toBe(1)
  expect(scores.value('blocks', 'left')).toBe(61)
  expect(scores.value('taps_beyond_count', 'left')).toBe(0)
})

test('the windows last 15 s and 60 s, whatever a clinic would like', () => {
  const given = give('box_and_block').on()
  expect(given.step()).toMatchObject({ name: 'try_out', practice: true, face: { window: 15 } })
  given.practised()
  expect(given.step()).toMatchObject({ name: 'moved', practice: false, face: { window: 60 } })
  expect(() => give('box_and_block', { conditions: { window: '3 s' } })).toThrow('no_such_option')
})

test('blocks are put back and mixed between practice and minute, in each hand', () => {
  const given = give('box_and_block').on().window(14)
  expect(given.step()?.name).toBe('moved')
  const kit = given
    .scores()
    .log.flatMap(({ body }) => (body.kind === 'kit.checked' && 'step' in body ? [body.step] : []))
  expect(kit).toEqual(['filled', 'refilled'])
})

test('pairs and thrown blocks are tallied beside the count', () => {
  const given = give('box_and_block').practised().begins()
  given.happens('pair').happens('pair').happens('thrown').happens('outside')
  const running = given.view().trials.at(-1)
  expect(running?.happenings).toEqual(['pair', 'pair', 'thrown', 'outside'])
  expect(running?.status).toBe('running')
})

test('ceiling: all 150 blocks are plausible, 151 must be asked again', () => {
  const given = give('box_and_block').practised()
  expect(() => give('box_and_block').practised().window(151)).toThrow('out_of_range')
  expect(given.window(150, 3).scores().value('blocks', 'right')).toBe(150)
})

describe('floor', () => {
  test('tried and unable is a real 0, flagged', () => {
    const scores = give('box_and_block').practised().closes('trial', 'unable').practised().window(40).scores()
    expect(scores.value('blocks', 'right')).toBe(0)
    expect(scores.trials.find(({ step, practice }) => step === 'moved' && !practice)?.outcome).toBe('unable')
    expect(scores.value('taps_beyond_count', 'right')).toBeNull()
  })

  test('a minute in which no block went over is a 0 as well', () => {
    expect(give('box_and_block').practised().window(0, 0).scores().value('blocks', 'right')).toBe(0)
  })
})

describe('awkward', () => {
  test('a void minute is given again; only the second one counts', () => {
    const given = give('box_and_block').practised().begins().voided('box_moved')
    const scores = given.window(58).practised().window(60).scores()
    expect(scores.value('blocks', 'right')).toBe(58)
    const minutes = scores.trials.filter(({ step, place }) => step === 'moved' && place.hand === 'right')
    expect(minutes.map(({ status }) => status)).toEqual(['void', 'standing'])
    expect(minutes[0]?.void?.happening).toBe('box_moved')
  })

  test('a minute cut short by pain has no score and is not scaled up', () => {
    const given = give('box_and_block').practised().begins().happens('pain').settles('hand', 7)
    const scores = given.practised().window(44).scores()
    expect(scores.value('blocks', 'right')).toBeNull()
    expect(scores.why('blocks', 'right')).toBe('stopped')
    expect(scores.value('blocks', 'left')).toBe(44)
  })

  test('refused and not allowed are no zero', () => {
    for (const outcome of ['refused', 'not_allowed', 'not_given'] as const) {
      const scores = give('box_and_block').practised().closes('hand', outcome).practised().window(50).scores()
      expect(scores.value('blocks', 'right')).toBeNull()
      expect(scores.why('blocks', 'right')).toBe(outcome)
    }
  })

  test('an absent arm is left out', () => {
    const scores = give('box_and_block', { facts: facts(arms('unaffected', 'absent')) })
      .practised()
      .window(70)
      .scores()
    expect(scores.order).toEqual({ items: ['right'], rule: 'only-hand' })
    expect(scores.why('blocks', 'left')).toBe('absent')
  })
})
