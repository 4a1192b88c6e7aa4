import { beforeEach, describe, expect, test } from 'vitest'
import { Giving, madeProtocol } from '../runner/giving.ts'
import { resumed, scoreOf } from './resumed.ts'

const SCALE = '{ 0: None, 1: Part, 2: Slow, 3: Normal }'
const PROTOCOL = madeProtocol(
  `
  - for-each: move
    in: moves
    steps:
      - { timed: carry, start: { said: go }, stop: { seen: home }, limit: 60 s, voids: 1 }
      - rated: quality
        of: carry
        scale: ${SCALE}
        highest: "last(carry.outcome) != 'done' ? 1 : last(carry.time) < 5 ? 3 : 2"
  - rated: reflex
    scale: { 0: None, 1: Part, 2: Full }
    allow: [0, 2]
    counts-as: { unable: 0 }
`,
  `
lists:
  moves: [{ id: near }, { id: far }]
scores:
  - { score: total, title: Total, value: sum(quality.grade) + sum(reflex.grade), unit: "{score}", better: higher, decimals: 0 }
`,
)

let giving: Giving
beforeEach(() => {
  giving = new Giving(PROTOCOL).begin()
})

const grade = (given: unknown, reason: string | null = null) =>
  giving.take(giving.body('graded', { grade: given, reason }))
const keep = (given: number, reason: string | null = null) => {
  expect(grade(given, reason)).toBeNull()
  giving.press('kept')
}

/** Past both moves, each done in full. */
const toReflex = () => {
  giving.time(4)
  keep(3)
  giving.time(4)
  keep(3)
}

describe('a grade beside a time', () => {
  test('stands once it is kept, in points', () => {
    giving.time(4)
    keep(3)
    expect(giving.rows('quality')).toEqual(['near done grade 3'])
    expect(giving.view().trials.at(-1)?.readings.grade).toMatchObject({ unit: '{score}', confirmed: false })
    expect(giving.where()).toBe('carry at far: waiting')
  })

  test('is shown in the scale’s own words, those above what was measured marked', () => {
    giving.time(7)
    expect(giving.view().step?.face).toMatchObject({
      grades: [
        { grade: 0, text: 'None', above: false },
        { grade: 1, text: 'Part', above: false },
        { grade: 2, text: 'Slow', above: false },
        { grade: 3, text: 'Normal', above: true },
      ],
      highest: 2,
    })
  })

  test('is no grade that the scale lacks', () => {
    giving.time(4)
    expect(grade(4)).toBe('no_such_grade')
    expect(grade(1.5)).toBe('malformed')
    expect(grade('2')).toBe('malformed')
  })

  test('above what was measured is refused, and taken with a reason as a deviation', () => {
    giving.time(7)
    expect(grade(3)).toBe('above_highest')
    expect(grade(3, ' ')).toBe('malformed')
    keep(3, 'The watch was late.')
    expect(giving.rows('quality')).toEqual(['near done grade 3'])
    expect(giving.view().deviations).toMatchObject([
      { code: 'grade_above', what: 'quality', reason: 'The watch was late.', norms: 'caution' },
    ])
    expect(giving.view().trials.at(-1)?.readings.grade).toMatchObject({ confirmed: true })
  })

  test('a reason where none is needed, or for a grade that was taken back, makes no deviation', () => {
    giving.time(7)
    grade(3, 'The watch was late.')
    keep(2, 'Needless.')
    expect(giving.view().deviations).toEqual([])
  })

  test('undo takes the deviation back with the grade', () => {
    giving.time(7)
    keep(3, 'The watch was late.')
    giving.do({ kind: 'undone' })
    expect(giving.view().deviations).toEqual([])
    expect(giving.where()).toBe('quality at near: graded')
    giving.do({ kind: 'undone' })
    expect(giving.where()).toBe('quality at near: waiting')
  })

  test('is void together with the time, and both are given anew', () => {
    giving.time(7)
    grade(2)
    giving.press('voided')
    expect(giving.where()).toBe('carry at near: waiting')
    expect(giving.view().trials.map(({ step, status }) => `${step} ${status}`)).toEqual([
      'carry void',
      'quality void',
    ])
    giving.time(4)
    keep(3)
    expect(giving.rows('quality')).toEqual(['near done grade 3'])
  })

  test('after a time at its limit is judged by the outcome', () => {
    giving.start()
    giving.do(giving.body('limit_reached', { at: giving.now + 60_000, clock: giving.clock }))
    giving.now += 62_000
    giving.press('kept')
    expect(giving.view().step?.face).toMatchObject({ highest: 1 })
    expect(grade(2)).toBe('above_highest')
    keep(1)
    expect(giving.rows('quality')).toEqual(['near done grade 1'])
  })

  test('comes back as it was after a restart', () => {
    giving.time(7)
    grade(3, 'The watch was late.')
    const again = resumed(giving)
    expect(again.where()).toBe('quality at near: graded')
    again.press('kept')
    expect(again.view().deviations).toMatchObject([{ code: 'grade_above' }])
  })

  test('is put right afterwards only to a grade of the scale, and above what was measured when confirmed', () => {
    giving.time(7)
    keep(1)
    const trial = giving.view().trials.at(-1)?.id ?? ''
    const correct = (value: number, confirmed = false) =>
      giving.take({ kind: 'corrected', trial, column: 'grade', value, confirmed, reason: 'Mistaken.' })
    expect(correct(2.5, true)).toBe('no_such_grade')
    expect(correct(7, true)).toBe('no_such_grade')
    expect(correct(3)).toBe('out_of_range')
    expect(correct(2)).toBeNull()
    expect(giving.rows('quality')).toEqual(['near done grade 2'])
  })
})

describe('a grade of its own', () => {
  test('is one of those that are allowed here', () => {
    toReflex()
    expect(grade(1)).toBe('no_such_grade')
    expect(giving.view().step?.face).toMatchObject({ grades: [{ grade: 0 }, { grade: 2 }] })
    keep(2)
    expect(scoreOf(giving, 'total')).toBe(8)
  })

  test('closed as tried, unable counts as what the file says; as refused it leaves the total without a value', () => {
    toReflex()
    const close = (outcome: 'unable' | 'refused') =>
      giving.do({ kind: 'closed', what: 'trial', place: {}, outcome, reason: '' })
    close('unable')
    expect(giving.rows('reflex')).toEqual(['unable grade 0'])
    expect(scoreOf(giving, 'total')).toBe(6)
    giving.do({ kind: 'undone' })
    close('refused')
    expect(scoreOf(giving, 'total')).toBeNull()
  })
})

describe('grades that hang on the place', () => {
  const protocol = madeProtocol(
    `
  - for-each: move
    in: moves
    steps:
      - rated: shown
        scale: { 0: None, 1: Part, 2: Full }
        allow: { from: "move.grades == 'two' ? [0, 2] : [0, 1, 2]" }
        highest: "move.cap > 0 ? move.cap : 2"
`,
    `
lists:
  moves: [{ id: knee, grades: two, cap: 0 }, { id: reach, grades: all, cap: 1 }]
`,
  )

  test('are worked out from the item', () => {
    giving = new Giving(protocol).begin()
    expect(grade(1)).toBe('no_such_grade')
    keep(2)
    expect(grade(2)).toBe('above_highest')
    keep(1)
    expect(giving.rows('shown')).toEqual(['knee done grade 2', 'reach done grade 1'])
  })

  test('with a highest that has no value nothing is capped, and the screen is told', () => {
    const unknown = madeProtocol(`
  - { timed: carry, start: { said: go }, stop: { seen: home }, limit: 60 s }
  - { rated: quality, of: carry, scale: ${SCALE}, highest: "last(carry.time) < 5 ? 3 : 2" }
`)
    giving = new Giving(unknown).begin().start()
    giving.do(giving.body('limit_reached', { at: giving.now + 60_000, clock: giving.clock }))
    giving.now += 62_000
    giving.press('kept')
    expect(giving.view().step?.face).toMatchObject({ highest: null, highestUnknown: true })
    expect(grade(3)).toBeNull()
  })
})
