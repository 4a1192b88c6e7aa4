import { array, assert, double, integer, property, record } from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Recorded } from '../../protocols/runner/events.ts'
import { runnerFor } from '../../protocols/runner/index.ts'
import { canBeDrawn, drawFrom } from '../../protocols/sections/for-each/draw.ts'
import { ADMINISTRATION, facts, Giving, madeProtocol } from '../runner/giving.ts'
import { rehearsed } from './rehearsed.ts'

const TOUCHES = madeProtocol(
  `
  - for-each: hand
    in: hands
    order: dominant-first
    steps:
      - for-each: touch
        in: touches
        steps:
          - { measured: said, unit: "{count}", range: [1, 2], voids: 5 }
`,
  `
lists: { touches: { draw: { one: 3, two: 3 }, alike-in-row: 2 } }
scores:
  - { score: twos, each: hand, value: "count(said.rows.filter(r, r.touch == 'two' && r.value == 2))", unit: "{count}", better: none }
  - { score: third, each: hand, value: "sum(said.rows.filter(r, r.touch_turn == 3).map(r, r.value))", unit: "{count}", better: none }
  - { score: of_each, each: [hand, touch], value: count(said.value), unit: "{count}", better: none }
`,
)

const draws = (log: readonly Recorded[]) =>
  log.flatMap(({ body }) =>
    body.kind === 'ordered' && 'rule' in body && body.rule === 'drawn' ? [body.items as string[]] : [],
  )

const longestRun = (items: readonly string[]): number =>
  items.reduce(
    ({ most, run, last }, item) => {
      const now = item === last ? run + 1 : 1
      return { most: Math.max(most, now), run: now, last: item }
    },
    { most: 0, run: 0, last: '' },
  ).most

describe('a drawn list', () => {
  test('is drawn anew each time its section is reached, by an event that the host adds', () => {
    const { log, end } = rehearsed(TOUCHES, 5)
    expect(end).toBe('finished')
    expect(draws(log).map((items) => items.toSorted().join(' '))).toEqual([
      'one one one two two two',
      'one one one two two two',
    ])
    for (const items of draws(log)) expect(longestRun(items)).toBeLessThanOrEqual(2)
  })

  test('gives each of its items a row of its own; a formula sees what was drawn, and which pass it was', () => {
    const giving = new Giving(TOUCHES).begin(facts({ dominantBefore: 'right' }))
    const [drawn = []] = draws(giving.log)
    expect(giving.view().step?.place).toEqual({ hand: 'right', touch: drawn[0], touch_turn: 1 })
    for (const item of drawn) giving.measure(item === 'one' ? 1 : 2)
    const rows = giving.view().trials.filter(({ status }) => status === 'standing')
    expect(rows.map(({ place }) => place.touch)).toEqual(drawn)
    expect(rows.map(({ place }) => place.touch_turn)).toEqual([1, 2, 3, 4, 5, 6])
    expect(giving.where()).toMatch(/^said at left/)
  })

  test('shows which pass of how many it is', () => {
    const giving = new Giving(TOUCHES).begin(facts({ dominantBefore: 'right' })).measure(1)
    expect(giving.view().step?.passes.at(-1)).toMatchObject({ loop: 'touch', number: 2, of: 6 })
  })

  test('a void touch is repeated and leaves the sequence as it is', () => {
    const giving = new Giving(TOUCHES).begin(facts({ dominantBefore: 'right' }))
    const before = giving.view().step?.place
    giving.do(giving.body('entered', { value: 1, confirmed: false })).press('voided')
    expect(giving.view().step?.place).toEqual(before)
    expect(draws(giving.log).length).toBe(1)
  })

  test('what is cut off has its rows, as many as were to be given', () => {
    const giving = new Giving(TOUCHES).begin(facts({ dominantBefore: 'right' })).measure(1)
    giving.do({ kind: 'closed', what: 'hand', place: { hand: 'right' }, outcome: 'unable', reason: '' })
    giving.do({ kind: 'closed', what: 'test', place: {}, outcome: 'not_given', reason: '' })
    expect(giving.rows('said').length).toBe(12)
  })

  test('replayed, gives what was drawn then; another draw than the bag can give is refused', () => {
    const { log, view } = rehearsed(TOUCHES, 11)
    const runner = runnerFor(TOUCHES)
    const { administration, refused } = runner.replay(log)
    expect(refused).toEqual([])
    expect(runner.view(administration, ADMINISTRATION)).toEqual(view)
    const wrong = log.map((event) =>
      event.body.kind === 'ordered' && 'rule' in event.body && event.body.rule === 'drawn'
        ? { ...event, body: { ...event.body, items: ['one', 'one', 'one', 'one', 'two', 'two'] } }
        : event,
    )
    expect(runner.replay(wrong).refused[0]?.refusal.refused).toBe('not_an_order')
  })

  test('undo of the act that led to a draw takes the draw back too', () => {
    const giving = new Giving(TOUCHES).begin(facts({ dominantBefore: 'right' }))
    const before = giving.log.length
    const [drawn = []] = draws(giving.log)
    for (const _ of drawn) giving.measure(1)
    giving.do({ kind: 'undone' })
    expect(giving.where()).toMatch(/^said at right.*: entered$/)
    expect(giving.log.length).toBeGreaterThan(before)
  })
})

describe('a draw', () => {
  const counts = record({
    one: integer({ min: 1, max: 8 }),
    two: integer({ min: 1, max: 8 }),
    none: integer({ min: 1, max: 4 }),
  })

  test('has of each what it is drawn of, and never more alike in a row than it may', () => {
    assert(
      property(
        counts,
        integer({ min: 1, max: 4 }),
        array(double({ min: 0, max: 0.999, noNaN: true }), { minLength: 20, maxLength: 20 }),
        (of, alikeInRow, chances) => {
          const draw = { counts: of, alikeInRow, per: null }
          if (!canBeDrawn(draw)) return
          let at = 0
          const all = of.one + of.two + of.none
          const items = drawFrom(draw, [], all, () => chances[at++ % chances.length] ?? 0)
          expect(longestRun(items)).toBeLessThanOrEqual(alikeInRow)
          for (const [item, count] of Object.entries(of)) {
            expect(items.filter((each) => each === item).length).toBe(count)
          }
        },
      ),
    )
  })
})

const PAUSES = madeProtocol(
  `
  - for-each: hand
    in: hands
    order: dominant-first
    steps:
      - repeat: press
        times: 5
        steps:
          - for-each: pause
            in: pauses
            take: 1
            steps:
              - choose: blank_now
                cases:
                  - when: pause.id == 'blank'
                    steps:
                      - { measured: blank, unit: "{count}", range: [0, 1] }
          - { measured: felt, unit: "{count}", range: [0, 1] }
`,
  'lists: { pauses: { draw: { plain: 4, blank: 1 }, per: hand } }',
)

describe('one bag for each hand', () => {
  test('is drawn on until it is empty: one blank in five, wherever it falls', () => {
    for (const seed of [1, 2, 3]) {
      const { log, end, view } = rehearsed(PAUSES, seed)
      expect(end).toBe('finished')
      expect(draws(log).map((items) => items.length)).toEqual(Array.from({ length: 10 }, () => 1))
      expect(draws(log).slice(0, 5).flat().toSorted()).toEqual(['blank', 'plain', 'plain', 'plain', 'plain'])
      expect(draws(log).slice(5).flat().toSorted()).toEqual(['blank', 'plain', 'plain', 'plain', 'plain'])
      const blanks = view.trials.filter(({ step, status }) => step === 'blank' && status === 'standing')
      expect(blanks.map(({ place }) => place.hand)).toEqual(['right', 'left'])
    }
  })
})
