import { describe, expect, test } from 'vitest'
import { arms, facts, give } from './giving.ts'

const injured = { facts: facts(arms('affected', 'unaffected')) }

test('ordinary: the uninjured hand practises and begins; net, total and speed by hand', () => {
  const scores = give('functional_dexterity', injured).practised().run(22).run(30).scores()
  expect(scores.order).toEqual({ items: ['left', 'right'], rule: 'unaffected-first' })
  expect(scores.value('net', 'left')).toBeCloseTo(22, 9)
  expect(scores.value('total', 'left')).toBeCloseTo(22, 9)
  // 16 pegs in 22 s, and in 30 s.
  expect(scores.value('speed', 'left')).toBeCloseTo(16 / 22, 9)
  expect(scores.value('speed', 'right')).toBeCloseTo(16 / 30, 9)
  expect(scores.trials.filter(({ practice }) => practice).map(({ place }) => place.hand)).toEqual(['left'])
})

test('penalties by key: palm up twice, braced once, dropped once make 25 s more, and the clock runs on', () => {
  const given = give('functional_dexterity').practised().begins()
  given.happens('supinated').happens('dropped').happens('supinated').happens('braced')
  const scores = given.stops(38).run(24).scores()
  // 2 × 5 s + 1 × 5 s + 1 × 10 s = 25 s beside the 38 s that passed.
  expect(scores.value('net', 'right')).toBeCloseTo(38, 9)
  expect(scores.value('total', 'right')).toBeCloseTo(63, 9)
  expect(scores.value('palm_up', 'right')).toBe(2)
  expect(scores.value('bracings', 'right')).toBe(1)
  expect(scores.value('drops', 'right')).toBe(1)
  expect(scores.value('speed', 'right')).toBeCloseTo(16 / 38, 9)
  expect(scores.value('total', 'left')).toBeCloseTo(24, 9)
  expect(scores.value('drops', 'left')).toBe(0)
})

describe('floor', () => {
  test('at the limit there is no time; the pegs turned are asked and kept', () => {
    const given = give('functional_dexterity').practised().run(120)
    expect(given.step()?.name).toBe('turned')
    const scores = given.answers(11).run(40).scores()
    for (const score of ['net', 'total', 'speed']) expect(scores.value(score, 'right')).toBeNull()
    expect(scores.why('net', 'right')).toBe('limit')
    expect(scores.value('pegs_turned', 'right')).toBe(11)
    expect(scores.hands('pegs_turned')).toEqual(['right'])
  })

  test('tried and unable has no time either, and is asked for its pegs', () => {
    const scores = give('functional_dexterity')
      .practised()
      .closes('trial', 'unable')
      .answers(0)
      .run(20)
      .scores()
    expect(scores.why('net', 'right')).toBe('unable')
    expect(scores.value('pegs_turned', 'right')).toBe(0)
  })

  test.each([
    [55, []],
    [55.1, ['past_55']],
    [119, ['past_55']],
  ])('%s s: the mark of 55 s is noted beyond it, and the real time stands', (seconds, notes) => {
    const given = give('functional_dexterity').practised().run(seconds)
    expect(given.noted()).toEqual(notes)
    expect(given.run(20).scores().value('net', 'right')).toBeCloseTo(seconds, 9)
  })
})

describe('awkward', () => {
  test('with neither hand injured the dominant one begins, and the rule says so', () => {
    const left = { facts: facts({ dominantBefore: 'left', usedNow: 'left' }) }
    const scores = give('functional_dexterity', left).practised().run(20).run(21).scores()
    expect(scores.order).toEqual({ items: ['left', 'right'], rule: 'dominant-first' })
  })

  test('a skipped peg is void: the run is repeated, its penalties go with it', () => {
    const given = give('functional_dexterity').practised().begins().happens('dropped').voided('skipped_peg')
    const scores = given.run(26).run(27).scores()
    expect(scores.value('net', 'right')).toBeCloseTo(26, 9)
    expect(scores.value('total', 'right')).toBeCloseTo(26, 9)
    expect(scores.value('drops', 'right')).toBe(0)
  })

  test('a refused hand has no score, no zero and no pegs', () => {
    const scores = give('functional_dexterity').practised().closes('hand', 'refused').run(20).scores()
    for (const score of ['net', 'total', 'speed', 'drops', 'pegs_turned'])
      expect(scores.value(score, 'right')).toBeNull()
    expect(scores.why('net', 'right')).toBe('refused')
  })

  test('an absent hand is left out, and the other one practises', () => {
    const scores = give('functional_dexterity', { facts: facts(arms('absent', 'unaffected')) })
      .practised()
      .run(25)
      .scores()
    expect(scores.order).toEqual({ items: ['left'], rule: 'only-hand' })
    expect(scores.value('net', 'left')).toBeCloseTo(25, 9)
  })
})
