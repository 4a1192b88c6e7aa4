import { describe, expect, test } from 'vitest'
import { arms, facts, give } from './giving.ts'

test('ordinary: one practice run and one run a hand, the dominant one first', () => {
  const given = give('nine_hole_peg').practised().run(17.3).practised().run(18.94)
  expect(given.step()).toBeNull()
  const scores = given.scores()
  expect(scores.order).toEqual({ items: ['right', 'left'], rule: 'dominant-first' })
  expect(scores.value('time', 'right')).toBeCloseTo(17.3, 9)
  expect(scores.value('time', 'left')).toBeCloseTo(18.94, 9)
  expect(scores.why('best', 'right')).toBe('needs_not_met')
  expect(scores.why('pegs_placed', 'right')).toBe('needs_not_met')
})

test('STD-ADM-1: practice never enters: its 25 s leave no trace in a score', () => {
  const scores = give('nine_hole_peg').practised().run(17.3).practised().run(18.9).scores()
  expect(scores.trials.filter(({ practice }) => practice)).toHaveLength(2)
  expect(scores.value('time', 'right')).toBeCloseTo(17.3, 9)
})

test('several runs, as a clinic may set: the first is the time, the fastest stands apart', () => {
  const given = give('nine_hole_peg', { conditions: { runs: '3' } })
  const scores = given.practised().run(21).run(18.2).run(19.4).practised().run(22).run(23).run(20.5).scores()
  expect(scores.value('time', 'right')).toBeCloseTo(21, 9)
  expect(scores.value('best', 'right')).toBeCloseTo(18.2, 9)
  expect(scores.value('time', 'left')).toBeCloseTo(22, 9)
  expect(scores.value('best', 'left')).toBeCloseTo(20.5, 9)
})

test('a void run is given again and only the second one counts; drops are tallied and cost nothing', () => {
  const given = give('nine_hole_peg').practised().begins().voided('other_hand').on()
  expect(given.step()?.name).toBe('run')
  given.begins().happens('dropped').happens('on_floor').voided('timing_mistake')
  const scores = given.run(19.04).practised().run(20).scores()
  expect(scores.value('time', 'right')).toBeCloseTo(19.04, 9)
  const runs = scores.trials.filter(({ step, place }) => step === 'run' && place.hand === 'right')
  expect(runs.map(({ status }) => status)).toEqual(['void', 'void', 'standing'])
  expect(runs[1]?.happenings).toEqual(['dropped', 'on_floor'])
})

describe('floor', () => {
  test('at 300 s the run ends without a time, and the pegs placed are kept', () => {
    const given = give('nine_hole_peg').practised().run(300)
    expect(given.step()?.name).toBe('placed')
    const scores = given.reads(6).practised().run(20).scores()
    expect(scores.value('time', 'right')).toBeNull()
    expect(scores.why('time', 'right')).toBe('limit')
    expect(scores.value('pegs_placed', 'right')).toBe(6)
    expect(scores.value('time', 'left')).toBeCloseTo(20, 9)
  })

  test('tried and unable has no time, and the pegs placed are kept', () => {
    const given = give('nine_hole_peg').practised().closes('trial', 'unable')
    expect(given.step()?.name).toBe('placed')
    const scores = given.reads(2).practised().run(20).scores()
    expect(scores.value('time', 'right')).toBeNull()
    expect(scores.why('time', 'right')).toBe('unable')
    expect(scores.value('pegs_placed', 'right')).toBe(2)
  })
})

describe('awkward', () => {
  test('a refused hand has no time and no pegs, the other hand stands', () => {
    const scores = give('nine_hole_peg').practised().run(17.3).closes('hand', 'refused').scores()
    expect(scores.value('time', 'right')).toBeCloseTo(17.3, 9)
    expect(scores.value('time', 'left')).toBeNull()
    expect(scores.why('time', 'left')).toBe('refused')
  })

  test('an absent arm is left out and never a zero', () => {
    const given = give('nine_hole_peg', { facts: facts(arms('absent', 'unaffected')) }).practised()
    expect(given.step()?.place.hand).toBe('left')
    const scores = given.run(18).scores()
    expect(given.step()).toBeNull()
    expect(scores.value('time', 'left')).toBeCloseTo(18, 9)
    expect(scores.value('time', 'right')).toBeNull()
    expect(scores.why('time', 'right')).toBe('absent')
  })

  test('a left-hander begins with the left; where dominance is mixed the less affected hand begins', () => {
    const left = give('nine_hole_peg', { facts: facts({ dominantBefore: 'left', usedNow: 'left' }) })
    expect(left.practised().run(18).practised().run(19).scores().order).toEqual({
      items: ['left', 'right'],
      rule: 'dominant-first',
    })
    const mixed = give('nine_hole_peg', {
      facts: facts({ dominantBefore: 'mixed', ...arms('affected', 'unaffected') }),
    })
    expect(mixed.practised().run(18).practised().run(40).scores().order).toEqual({
      items: ['left', 'right'],
      rule: 'less-affected-first',
    })
  })

  test('stopped for pain: what was running has no score, the other hand may still be given', () => {
    const given = give('nine_hole_peg').practised().begins().happens('pain')
    expect(given.view().phase).toBe('halted')
    const scores = given.settles('hand', 6).practised().run(21).scores()
    expect(scores.why('time', 'right')).toBe('stopped')
    expect(scores.value('time', 'left')).toBeCloseTo(21, 9)
  })
})

const BORN = { birth: { known: 'date', date: '1985-03-02' }, sex: 'F' } as const
const with17 = (conditions: Readonly<Record<string, string>>) =>
  give('nine_hole_peg', { facts: facts(BORN), conditions })
    .practised()
    .run(17)
    .practised()
    .run(18)
    .scores()

/** Conditions in which a table differs from what was done on this board. */
const differing = (norm: string, build: string) =>
  with17({ board_build: build })
    .norm(norm, 'time', 'right')
    .caution.filter(({ code }) => code === 'condition_differs')
    .map(({ detail }) => detail.condition)

describe('what the tables say', () => {
  test('the board decides which table stands without a caution about it', () => {
    expect(differing('adults_1985', 'square_box')).toEqual([])
    expect(differing('adults_2003', 'square_box')).toEqual(['board_build'])
    expect(differing('adults_1985', 'round_dish')).toEqual(['board_build'])
    expect(differing('adults_2003', 'round_dish')).toEqual([])
  })

  test('41 on the birthday itself: the row from 40 in one table, from 41 in the other', () => {
    const scores = with17({ board_build: 'square_box' })
    // Memory: 1985, women of 40 to 44, right: 16.8 s (2.1), n 31. 2003, women of 41 to 45, right: 16.54 s (2.14).
    const [first] = scores.norm('adults_1985', 'time', 'right').strata
    const [second] = scores.norm('adults_2003', 'time', 'right').strata
    expect(first).toMatchObject({ ageMin: 40, n: 31 })
    expect(first?.z).toBeCloseTo(0.2 / 2.1, 9)
    expect(second).toMatchObject({ ageMin: 41, n: 37 })
    expect(second?.performanceZ).toBeCloseTo(-0.46 / 2.14, 9)
  })

  test('more than one run stands beside the tables as a difference', () => {
    const given = give('nine_hole_peg', {
      facts: facts(BORN),
      conditions: { runs: '2', board_build: 'square_box' },
    })
    const scores = given.practised().run(17).run(16).practised().run(18).run(17).scores()
    const norm = scores.norm('adults_1985', 'time', 'right')
    expect(norm.status).toBe('used')
    expect(norm.caution).toContainEqual({
      code: 'condition_differs',
      detail: { condition: 'runs', here: '2', there: '1' },
    })
  })
})
