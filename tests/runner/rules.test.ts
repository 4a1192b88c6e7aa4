import { describe, expect, test } from 'vitest'
import { Giving, madeProtocol } from './giving.ts'

const LISTS = `lists:
  tasks: [{ id: hard, role: hardest }, { id: easy, role: easiest }, { id: other, role: other }]`

const withRule = (rule: string) =>
  madeProtocol(
    `
  - for-each: part
    in: parts
    steps:
      - for-each: task
        in: tasks
        steps:
          - { measured: quality, unit: "{score}", range: [0, 3] }
          - { ${rule} }
  - { position: after }
`,
    `${LISTS}\n  parts: [{ id: near }, { id: far }]`,
  )

const asking = () =>
  new Giving(withRule('rule: floor, when: "max(quality.value) == 0", end: task, confirm: Sure?'))
    .begin()
    .measure(0)

const ruled = (giving: Giving, apply: boolean, place = { part: 'near', task: 'hard' }) =>
  giving.take({ kind: 'ruled', rule: 'floor', place, apply })

describe('a rule', () => {
  test('ends its section and credits what that cuts off', () => {
    const giving = new Giving(
      withRule(
        `rule: full, when: "task.role == 'hardest' && min(quality.value) == 3", end: task, credit: { quality: 3 }`,
      ),
    ).begin()
    giving.measure(3)
    expect(giving.where()).toBe('quality at far, hard: waiting')
    expect(giving.rows('quality')).toEqual([
      'near hard done value 3',
      'near easy credited value 3',
      'near other credited value 3',
    ])
    expect(giving.view().rules).toMatchObject([
      { rule: 'full', place: { part: 'near', task: 'hard' }, did: 'credited' },
    ])
    giving.measure(2)
    expect(giving.where()).toBe('quality at far, easy: waiting')
  })

  test('ends the test; what is cut off without credit is not given', () => {
    const giving = new Giving(withRule('rule: floor, when: "max(quality.value) == 0", end: test')).begin()
    giving.measure(1).measure(0)
    expect(giving.where()).toBe('end')
    expect(giving.rows('quality')).toEqual([
      'near hard done value 1',
      'near easy done value 0',
      'near other not_given',
      'far hard not_given',
      'far easy not_given',
      'far other not_given',
    ])
  })

  test('only notes where it ends nothing', () => {
    const giving = new Giving(
      withRule('rule: low, when: "last(quality.value) < 2", note: Watch the wrist.'),
    ).begin()
    giving.measure(1)
    expect(giving.where()).toBe('quality at near, easy: waiting')
    expect(giving.view().rules).toEqual([
      { rule: 'low', place: { part: 'near', task: 'hard' }, did: 'noted', text: 'Watch the wrist.' },
    ])
    giving.measure(3)
    expect(giving.view().rules.length).toBe(1)
  })

  test('with a null condition does nothing, and says so', () => {
    const giving = new Giving(withRule('rule: floor, when: "max(quality.value) == 0", end: test')).begin()
    giving.do(giving.body('skipped', { reason: 'No time' }))
    expect(giving.where()).toBe('quality at near, easy: waiting')
    expect(giving.view().rules).toMatchObject([{ rule: 'floor', did: 'nothing' }])
  })

  describe('that asks before it acts', () => {
    test('waits for the answer', () => {
      const giving = asking()
      expect(giving.view()).toMatchObject({
        step: null,
        asking: { rule: 'floor', place: { part: 'near', task: 'hard' }, text: 'Sure?' },
      })
      expect(ruled(giving, true, { part: 'far', task: 'hard' })).toBe('wrong_place')
      expect(ruled(giving, true)).toBeNull()
      expect(giving.where()).toBe('quality at far, hard: waiting')
      expect(giving.rows('quality')).toEqual([
        'near hard done value 0',
        'near easy not_given',
        'near other not_given',
      ])
    })

    test('and goes on where it is declined', () => {
      const giving = asking()
      expect(ruled(giving, false)).toBeNull()
      expect(giving.where()).toBe('quality at near, easy: waiting')
      expect(giving.view().rules.map(({ did }) => did)).toEqual(['asked', 'nothing'])
    })

    test('a hand or the test can be closed while it asks', () => {
      const giving = asking()
      giving.do({ kind: 'closed', what: 'test', place: {}, outcome: 'refused', reason: '' })
      expect(giving.rows('quality')).toEqual([
        'near hard done value 0',
        'near easy refused',
        'near other refused',
        'far hard refused',
        'far easy refused',
        'far other refused',
      ])
    })

    test('a restart asks again', () => {
      const giving = asking()
        .do({ kind: 'interrupted', cause: 'restart' })
        .do({ kind: 'confirmed', what: 'resume' })
      expect(giving.view().asking?.rule).toBe('floor')
    })
  })
})

const repeated = (times: string) =>
  madeProtocol(
    `
  - repeat: runs
    times: ${times}
    steps:
      - { measured: taps, unit: "{count}", range: [0, 100], voids: 1 }
`,
    'conditions: { rounds: { set-by: clinic, values: [1, 2, 3], usual: 2 } }',
  )

const passes = (giving: Giving, values: number[]) => {
  for (const value of values) if (giving.where() !== 'end') giving.measure(value)
  return giving.rows('taps').length
}

const pass = (times: string) => new Giving(repeated(times)).begin().measure(1).view().step?.passes

describe('a repeat', () => {
  test('runs as often as the file or a condition says', () => {
    expect(passes(new Giving(repeated('3')).begin(), [1, 2, 3, 4, 5])).toBe(3)
    expect(
      passes(new Giving(repeated('{ from: rounds }')).begin(undefined, { rounds: '1' }), [1, 2, 3, 4]),
    ).toBe(1)
    expect(passes(new Giving(repeated('{ from: rounds }')).begin(), [1, 2, 3, 4])).toBe(2)
  })

  const steady = '{ least: 2, most: 5 }\n    until: "spread(last(taps.value, 2)) <= 5"'

  test('ends once the fewest are done and the condition holds', () => {
    expect(passes(new Giving(repeated(steady)).begin(), [50, 52, 54])).toBe(2)
    expect(passes(new Giving(repeated(steady)).begin(), [10, 50, 20, 22])).toBe(4)
  })

  test('ends at the most where it never does', () => {
    expect(passes(new Giving(repeated(steady)).begin(), [10, 50, 10, 50, 10, 50])).toBe(5)
  })

  test('that would have gone on otherwise after a correction is named, and nothing is re-routed', () => {
    const giving = new Giving(repeated(steady)).begin().measure(50).measure(52)
    expect(giving.where()).toBe('end')
    const trial = giving.view().trials[0]?.id ?? ''
    giving.do({ kind: 'corrected', trial, column: 'value', value: 20, reason: 'Misread' })
    expect(giving.view().wouldDiffer).toEqual([{ rule: 'runs', place: { runs: 2 } }])
    expect(giving.where()).toBe('end')
  })

  test('later passes have no say in what a condition would have said then', () => {
    const giving = new Giving(repeated(steady)).begin().measure(10).measure(50).measure(20).measure(22)
    const trial = giving.view().trials[0]?.id ?? ''
    giving.do({ kind: 'corrected', trial, column: 'value', value: 48, reason: 'Misread' })
    expect(giving.view().wouldDiffer).toEqual([{ rule: 'runs', place: { runs: 2 } }])
  })

  test('a void trial is no pass', () => {
    const giving = new Giving(repeated(steady)).begin().measure(50)
    giving.press('voided')
    expect(giving.where()).toBe('taps at 2: waiting')
    giving.measure(51)
    expect(giving.where()).toBe('end')
    expect(giving.rows('taps')).toEqual(['1 done value 50', '2 done value 51'])
  })

  test('the view says which pass it is, and of how many where that is fixed', () => {
    expect(pass('3')).toEqual([{ loop: 'runs', list: null, id: null, number: 2, of: 3, text: null }])
    expect(pass(steady)).toMatchObject([{ number: 2, of: null }])
  })
})
