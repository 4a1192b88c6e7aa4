import { describe, expect, test } from 'vitest'
import { runnerFor } from '../../protocols/runner/index.ts'
import { Giving, madeProtocol } from './giving.ts'

const LISTS = 'lists: { parts: [{ id: near }, { id: middle }, { id: far }] }'

/** The near part done in full credits the others; then a squeeze with each hand, and one more. */
const CREDITING = madeProtocol(
  `
  - for-each: hand
    in: hands
    order: right-first
    steps:
      - for-each: part
        in: parts
        steps:
          - { measured: grade, unit: "{score}", range: [0, 3] }
          - { rule: full, when: "last(grade.value) == 3", end: part, credit: { grade: 3 }, note: The others count as full. }
      - { measured: squeeze, unit: kgf, range: [0, 100] }
`,
  LISTS,
)

const correct = (giving: Giving, index: number, value: number) =>
  giving.do({
    kind: 'corrected',
    trial: giving.view().trials[index]?.id ?? '',
    column: 'value',
    value,
    reason: 'Misread',
  })

const takeUp = (giving: Giving, at = 0) => {
  const { rule = '', place = {} } = giving.view().missing[at] ?? {}
  return giving.take({ kind: 'taken_up', rule, place })
}

/** All given, the right hand's other parts credited; then it shows that the near one was done in part only. */
const corrected = () => {
  const giving = new Giving(CREDITING).begin()
  giving.measure(3).measure(30).measure(3).measure(20)
  expect(giving.where()).toBe('end')
  return correct(giving, 0, 2)
}

const CREDITED = ['right near done value 2', 'right middle credited value 3', 'right far credited value 3']
const LEFT = ['left near done value 3', 'left middle credited value 3', 'left far credited value 3']

describe('what a correction shows to be missing', () => {
  test('is named at once, changes nothing by itself, and is offered at the end', () => {
    const giving = new Giving(CREDITING).begin().measure(3)
    correct(giving, 0, 2)
    expect(giving.view().missing).toEqual([{ rule: 'full', place: { hand: 'right', part: 'near' } }])
    expect(giving.where()).toBe('squeeze at right: waiting')
    expect(takeUp(giving)).toBe('not_now')
    giving.measure(30).measure(2).measure(2).measure(2).measure(20)
    expect(giving.view().offers).toContainEqual({ event: 'taken_up', open: true, main: false })
    expect(takeUp(giving)).toBeNull()
    expect(giving.where()).toBe('grade at right, middle: waiting')
  })

  test('is given from where the rule stands to the end of what it cut off, and nothing else again', () => {
    const giving = corrected()
    expect(giving.rows('grade')).toEqual([...CREDITED, ...LEFT])
    expect(takeUp(giving)).toBeNull()
    expect(giving.view()).toMatchObject({ missing: [], wouldDiffer: [] })
    giving.measure(1)
    expect(giving.where()).toBe('grade at right, far: waiting')
    expect(giving.view().progress.due).toBe(giving.view().progress.passed + 1)
    giving.measure(0)
    expect(giving.where()).toBe('end')
    expect(giving.rows('grade')).toEqual([
      'right near done value 2',
      ...LEFT,
      'right middle done value 1',
      'right far done value 0',
    ])
    expect(giving.rows('squeeze')).toEqual(['right done value 30', 'left done value 20'])
    const replaced = giving.view().trials.filter(({ void: broken }) => broken?.cause === 'taken_up')
    expect(replaced.map(({ place, status }) => [place.part, status])).toEqual([
      ['middle', 'void'],
      ['far', 'void'],
    ])
    expect(giving.view().rules).toEqual([
      expect.objectContaining({ did: 'credited', place: { hand: 'left', part: 'near' } }),
      { rule: 'full', place: { hand: 'right', part: 'near' }, did: 'taken_up', text: '' },
    ])
    expect(giving.take({ kind: 'finished' })).toBeNull()
  })

  test('meets the rules anew: one that holds there credits what is left, and can be corrected in its turn', () => {
    const giving = corrected()
    takeUp(giving)
    giving.measure(3)
    expect(giving.where()).toBe('end')
    expect(giving.rows('grade').slice(-2)).toEqual([
      'right middle done value 3',
      'right far credited value 3',
    ])
    correct(
      giving,
      giving.view().trials.findLastIndex(({ outcome }) => outcome === 'done'),
      1,
    )
    expect(giving.view().missing).toEqual([{ rule: 'full', place: { hand: 'right', part: 'middle' } }])
    takeUp(giving)
    expect(giving.measure(2).where()).toBe('end')
    expect(giving.rows('grade').slice(-2)).toEqual(['right middle done value 1', 'right far done value 2'])
  })

  test('is given in each place where it is missing, one after the other', () => {
    const giving = correct(corrected(), 4, 1)
    expect(giving.view().missing.map(({ place }) => place.hand)).toEqual(['right', 'left'])
    takeUp(giving, 1)
    giving.measure(0).measure(0)
    expect(giving.where()).toBe('end')
    takeUp(giving)
    giving.measure(0).measure(0)
    expect(giving.view()).toMatchObject({ missing: [], unexplained: [] })
    expect(giving.rows('grade')).toHaveLength(6)
    expect(giving.rows('grade').some((row) => row.includes('credited'))).toBe(false)
  })

  test('is refused where nothing is missing, and may be left so', () => {
    const giving = corrected()
    const at = (hand: string) =>
      giving.take({ kind: 'taken_up', rule: 'full', place: { hand, part: 'near' } })
    expect(at('left')).toBe('nothing_missing')
    correct(giving, 0, 3)
    expect(giving.view().offers).toContainEqual({ event: 'taken_up', open: false, main: false })
    expect(at('right')).toBe('nothing_missing')
    correct(giving, 0, 2)
    expect(giving.take({ kind: 'finished' })).toBeNull()
    expect(giving.view()).toMatchObject({ phase: 'finished', missing: [{ rule: 'full' }] })
    expect(takeUp(giving)).toBe('not_in_phase')
  })

  test('can be taken back, and its replay is the same', () => {
    const giving = corrected()
    const before = giving.view()
    takeUp(giving)
    giving.do({ kind: 'undone' })
    expect(giving.view()).toEqual(before)
    takeUp(giving)
    giving.measure(1)
    const { administration, refused } = runnerFor(CREDITING).replay(giving.log)
    expect(refused).toEqual([])
    expect(runnerFor(CREDITING).view(administration, before.id)).toEqual(giving.view())
  })

  test.each([
    ['hand', { hand: 'right' }],
    ['part', { hand: 'right', part: 'middle' }],
    ['test', {}],
  ])('ends early as a %s is closed: rows for what is left of it, once', (what, place) => {
    const giving = corrected()
    takeUp(giving)
    giving.do({ kind: 'closed', what, place, outcome: 'refused', reason: 'Tired' } as never)
    const left = what === 'part' ? giving.measure(1) : giving
    expect(left.where()).toBe('end')
    const far = what === 'part' ? 'done value 1' : 'refused'
    expect(giving.rows('grade').slice(-2)).toEqual(['right middle refused', `right far ${far}`])
    expect(giving.rows('grade')).toHaveLength(6)
    expect(giving.rows('squeeze')).toHaveLength(2)
  })

  test('a stop that ends the hand ends it too; the other hand keeps what it has', () => {
    const giving = corrected()
    takeUp(giving)
    giving.do({ kind: 'halted', stamp: null })
    giving.do({ kind: 'settled', ends: 'hand', reason: 'Pain', pain: 5, done: '' })
    expect(giving.where()).toBe('end')
    expect(giving.rows('grade').slice(-2)).toEqual(['right middle stopped', 'right far stopped'])
    expect(giving.rows('squeeze')).toHaveLength(2)
  })

  test('the hands taken for each other: what is missing is missing at the other one', () => {
    const giving = corrected().do({ kind: 'relabelled', reason: 'Mixed up' })
    expect(giving.view().missing).toEqual([{ rule: 'full', place: { hand: 'left', part: 'near' } }])
    takeUp(giving)
    expect(giving.where()).toBe('grade at left, middle: waiting')
  })
})

test('a rule that had ended the test lets all the rest be given', () => {
  const giving = new Giving(
    madeProtocol(`
  - for-each: hand
    in: hands
    order: right-first
    steps:
      - { measured: squeeze, unit: kgf, range: [0, 100] }
      - { rule: none, when: "last(squeeze.value) == 0", end: test, confirm: End here? }
      - { measured: pinch, unit: kgf, range: [0, 100] }
  - { measured: last_one, unit: kgf, range: [0, 100] }
`),
  ).begin()
  giving.measure(0).do({ kind: 'ruled', rule: 'none', place: { hand: 'right' }, apply: true })
  expect(giving.where()).toBe('end')
  correct(giving, 0, 8)
  takeUp(giving)
  expect(giving.where()).toBe('pinch at right: waiting')
  giving.measure(1).measure(9).measure(2).measure(3)
  expect(giving.where()).toBe('end')
  expect([...giving.rows('pinch'), ...giving.rows('last_one')]).toEqual([
    'right done value 1',
    'left done value 2',
    'done value 3',
  ])
})

describe('passes that a condition had left out', () => {
  test('a repeat that had ended too soon gets its further passes', () => {
    const giving = new Giving(
      madeProtocol(`
  - for-each: hand
    in: hands
    order: right-first
    steps:
      - repeat: attempt
        times: { least: 2, most: 4 }
        until: "spread(squeeze.value) < 3"
        steps:
          - { measured: squeeze, unit: kgf, range: [0, 100] }
      - { measured: pinch, unit: kgf, range: [0, 100] }
`),
    ).begin()
    for (const value of [30, 31, 5, 20, 21, 6]) giving.measure(value)
    expect(giving.where()).toBe('end')
    correct(giving, 1, 37)
    expect(giving.view().missing).toEqual([{ rule: 'attempt', place: { hand: 'right', attempt: 2 } }])
    takeUp(giving)
    expect(giving.where()).toBe('squeeze at right, 3: waiting')
    giving.measure(33)
    expect(giving.where()).toBe('squeeze at right, 4: waiting')
    giving.measure(34)
    expect(giving.where()).toBe('end')
    expect(giving.view().missing).toEqual([])
    expect(giving.rows('squeeze')).toHaveLength(6)
  })

  test('an item that was passed over is given, those that were given are not given again', () => {
    const giving = new Giving(
      madeProtocol(
        `
  - { measured: level, unit: "{score}", range: [0, 3] }
  - for-each: part
    in: parts
    where: part.least <= only(level.value)
    steps:
      - { measured: grade, unit: "{score}", range: [0, 3] }
`,
        'lists: { parts: [{ id: near, least: 2 }, { id: middle, least: 0 }, { id: far, least: 1 }] }',
      ),
    ).begin()
    giving.measure(0).measure(3)
    expect(giving.where()).toBe('end')
    correct(giving, 0, 2)
    takeUp(giving)
    expect(giving.where()).toBe('grade at near: waiting')
    giving.measure(1)
    expect(giving.where()).toBe('grade at far: waiting')
    giving.measure(2)
    expect(giving.where()).toBe('end')
    expect(giving.rows('grade')).toEqual(['middle done value 3', 'near done value 1', 'far done value 2'])
    expect(giving.view().missing).toEqual([])
  })
})
