import { describe, expect, test } from 'vitest'
import type { EventBody } from '../../protocols/runner/events.ts'
import { scoreAll } from '../../protocols/scoring/scores.ts'
import { facts, Giving, madeProtocol } from '../runner/giving.ts'
import { rehearsed } from './rehearsed.ts'

/** The hierarchical skip: the hardest task first; full marks credit the rest, two noughts end the part, and the odd middle is asked. */
const PROTOCOL = madeProtocol(
  `
  - for-each: part
    in: parts
    steps:
      - group: one_part
        steps:
          - { rule: gate, when: "part.id == 'far' && reached == 0", end: one_part, credit: { quality: 0 } }
          - for-each: task
            in: tasks
            where: task.part == part.id
            steps:
              - { measured: quality, unit: "{score}", range: [0, 3] }
              - { rule: full, when: "task.role == 'first' && last(quality.value) == 3", end: task, credit: { quality: 3 } }
              - { rule: floor, when: "task.role == 'second' && last(quality.value) == 0 && first_grade == 0", end: task, credit: { quality: 0 } }
              - { rule: odd, when: "task.role == 'second' && last(quality.value) == 0 && first_grade > 0", end: task, credit: { quality: 0 }, confirm: Credit the rest? }
`,
  `
lists:
  parts: [{ id: near }, { id: far }]
  tasks:
    - { id: near_hard, part: near, role: first }
    - { id: near_easy, part: near, role: second }
    - { id: near_other, part: near, role: other }
    - { id: far_hard, part: far, role: first }
    - { id: far_easy, part: far, role: second }
scores:
  - { score: first_grade, each: part, value: first(quality.value), unit: "{score}", shown: false }
  - { score: points, each: part, value: sum(quality.value), unit: "{score}", better: higher }
  - { score: reached, value: "points['near']", unit: "{score}", shown: false }
  - { score: total, value: sum(points), unit: "{score}", better: higher }
  - { score: observed, value: "count(quality.rows.filter(r, r.outcome != 'credited'))", unit: "{count}", better: none }
`,
)
const begun = () => new Giving(PROTOCOL).begin(facts({ dominantBefore: 'right' }))
const scores = (giving: Giving) =>
  Object.fromEntries(
    scoreAll(giving.runner.standing(giving.administration))
      .filter(({ place }) => Object.keys(place).length === 0)
      .map(({ score, value, missing }) => [score.name, value ?? missing?.code]),
  )
const did = (giving: Giving) => giving.view().rules.map(({ rule, did: what }) => `${rule} ${what}`)
const odd = (giving: Giving, apply: boolean) =>
  giving.take({ kind: 'ruled', rule: 'odd', place: { part: 'near', task: 'near_easy' }, apply })

describe('a skip with credit', () => {
  test('full marks for the hardest credit the rest of the part, and of that part alone', () => {
    const giving = begun().measure(3)
    expect(giving.where()).toBe('quality at far, far_hard: waiting')
    giving.measure(2).measure(1)
    expect(giving.where()).toBe('end')
    expect(scores(giving)).toMatchObject({ total: 12, observed: 3 })
    expect(did(giving)).toEqual(['full credited'])
  })

  test('nought for the hardest and the easiest ends the part with noughts, which are credited and not seen', () => {
    const giving = begun().measure(0).measure(0)
    expect(giving.rows('quality').slice(0, 3)).toEqual([
      'near near_hard done value 0',
      'near near_easy done value 0',
      'near near_other credited value 0',
    ])
    expect(did(giving)).toContain('floor credited')
  })

  test('a gate before a block reads a score wider than the place, and credits the whole block', () => {
    const giving = begun().measure(0).measure(0)
    expect(giving.where()).toBe('end')
    expect(did(giving)).toEqual(['floor credited', 'gate credited'])
    expect(scores(giving)).toMatchObject({ total: 0, observed: 2 })
  })

  test('the odd middle is asked: applied, the rest is credited; not applied, the rest is given', () => {
    const applied = begun().measure(2).measure(0)
    expect(applied.view().asking?.rule).toBe('odd')
    expect(odd(applied, true)).toBeNull()
    expect(applied.where()).toBe('quality at far, far_hard: waiting')
    const given = begun().measure(2).measure(0)
    expect(odd(given, false)).toBeNull()
    expect(given.where()).toBe('quality at near, near_other: waiting')
    given.measure(1)
    expect(scores(given)).toMatchObject({ reached: 3 })
  })

  test('undo of the answer asks again; undo of the grade takes back what it credited', () => {
    const giving = begun().measure(2).measure(0)
    odd(giving, true)
    giving.do({ kind: 'undone' })
    expect(giving.view().asking?.rule).toBe('odd')
    const full = begun().measure(3).do({ kind: 'undone' })
    expect(full.rows('quality')).toEqual([])
  })

  test('a refused item leaves no total, since it is no nought', () => {
    const giving = begun()
    const place = { part: 'near', task: 'near_hard' }
    giving.do({ kind: 'closed', what: 'trial', place, outcome: 'refused', reason: '' })
    giving.measure(1).measure(1).measure(1).measure(1)
    expect(scores(giving)).toMatchObject({ total: 'refused' })
  })

  test('is rehearsed to the end', () => {
    for (const seed of [1, 2, 3]) expect(rehearsed(PROTOCOL, seed).end).toBe('finished')
  })
})

const inOrder = (order: string) =>
  madeProtocol(
    `
  - for-each: task
    in: tasks
    order: ${order}
    steps:
      - { measured: quality, unit: "{score}", range: [0, 3] }
`,
    'lists: { tasks: [{ id: one }, { id: two }, { id: three }] }',
  )

const ordered = (...items: string[]): EventBody => ({
  kind: 'ordered',
  section: 'task',
  place: {},
  items,
  rule: 'chosen',
})

describe('the order of items', () => {
  test('is shuffled or balanced by an event of the host, with every item once', () => {
    for (const order of ['shuffled', 'balanced']) {
      const { log, end } = rehearsed(inOrder(order), 4)
      expect(end).toBe('finished')
      const [items = []] = log.flatMap(({ body }) =>
        body.kind === 'ordered' && 'items' in body ? [body.items as string[]] : [],
      )
      expect(items.toSorted()).toEqual(['one', 'three', 'two'])
    }
  })

  test('is the examiner’s where the file leaves it to be chosen', () => {
    const giving = new Giving(inOrder('chosen')).begin()
    expect(giving.view().choosing?.items).toEqual(['one', 'two', 'three'])
    expect(giving.take(ordered('two', 'two', 'one'))).toBe('not_an_order')
    giving.do(ordered('three', 'one', 'two'))
    expect(giving.where()).toBe('quality at three: waiting')
    expect(rehearsed(inOrder('chosen'), 1).end).toBe('finished')
  })
})
