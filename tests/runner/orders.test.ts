import { array, assert, double, property } from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { ClientFacts } from '../../protocols/client.ts'
import { balanced } from '../../protocols/sections/for-each/orders.ts'
import { arm, facts, Giving, madeProtocol } from './giving.ts'

const handsIn = (order: string) =>
  madeProtocol(`
  - for-each: hand
    in: hands
    order: ${order}
    steps:
      - { measured: squeeze, unit: kgf, range: [0, 100] }
`)

const arms = (right: ClientFacts['arms']['right']['status'], left: typeof right) => ({
  arms: { right: arm(right), left: arm(left) },
})

const first = (order: string, known: ClientFacts) => {
  const { firstHand } = new Giving(handsIn(order)).begin(known).view()
  return `${firstHand?.hand} by ${firstHand?.rule}`
}

const runs = (order: string, random: number, earlier: readonly (readonly string[])[] = []) => {
  const giving = new Giving(handsIn('right-first'))
  const { runner } = new Giving(handsIn(order))
  const logged = giving.begin().log.filter(({ body }) => body.kind !== 'ordered')
  const { administration } = runner.replay(logged)
  return runner.owed(administration, { random: () => random, earlier: () => earlier })
}

describe('the order of the hands', () => {
  test.each([
    ['dominant-first', facts({ dominantBefore: 'left' }), 'left by dominant-first'],
    ['nondominant-first', facts({ dominantBefore: 'left' }), 'right by nondominant-first'],
    ['affected-first', facts(arms('unaffected', 'affected')), 'left by affected-first'],
    ['unaffected-first', facts(arms('unaffected', 'affected')), 'right by unaffected-first'],
    ['less-affected-first', facts(arms('affected', 'less_affected')), 'left by less-affected-first'],
    ['right-first', facts({ dominantBefore: 'left' }), 'right by right-first'],
    ['left-first', facts({ dominantBefore: 'right' }), 'left by left-first'],
  ])('%s', (order, known, expected) => {
    expect(first(order, known)).toBe(expected)
  })

  test('takes the next rule where one cannot decide', () => {
    const order = '[unaffected-first, dominant-first]'
    expect(first(order, facts({ ...arms('affected', 'less_affected'), dominantBefore: 'left' }))).toBe(
      'left by dominant-first',
    )
    expect(first(order, facts({ ...arms('affected', 'unaffected'), dominantBefore: 'right' }))).toBe(
      'left by unaffected-first',
    )
  })

  test('always resolves: less affected first, then the hand used now, then right', () => {
    const order = 'dominant-first'
    const mixed = { dominantBefore: 'mixed' } as const
    expect(first(order, facts({ ...mixed, ...arms('affected', 'unaffected'), usedNow: 'right' }))).toBe(
      'left by less-affected-first',
    )
    expect(first(order, facts({ ...mixed, ...arms('affected', 'affected'), usedNow: 'left' }))).toBe(
      'left by used-now-first',
    )
    expect(first(order, facts(mixed))).toBe('right by right-first')
  })

  test('is recorded with the rule used, and nothing else is an order', () => {
    const giving = new Giving(handsIn('chosen')).begin()
    expect(giving.view()).toMatchObject({
      step: null,
      choosing: { section: 'hand', place: {}, list: 'hands', items: ['right', 'left'], texts: {} },
    })
    const order = (items: string[], section = 'hand', place = {}) =>
      giving.take({ kind: 'ordered', section, place, items, rule: 'chosen' })
    expect(order(['left'])).toBe('not_an_order')
    expect(order(['left', 'left'])).toBe('not_an_order')
    expect(order(['left', 'right'], 'arm')).toBe('wrong_section')
    expect(order(['left', 'right'], 'hand', { round: 1 })).toBe('wrong_place')
    expect(order(['left', 'right'])).toBeNull()
    expect(giving.where()).toBe('squeeze at left: waiting')
    expect(giving.view()).toMatchObject({ choosing: null, firstHand: { hand: 'left', rule: 'chosen' } })
  })

  test('shuffled and balanced take their chance from outside', () => {
    expect(runs('shuffled', 0)).toMatchObject({ items: ['right', 'left'], rule: 'shuffled' })
    expect(runs('shuffled', 0.9)).toMatchObject({ items: ['left', 'right'], rule: 'shuffled' })
    expect(runs('balanced', 0.9)).toMatchObject({ items: ['left', 'right'], rule: 'balanced' })
  })

  test('balanced takes the order that earlier clients had least, and draws between several', () => {
    const right = ['right', 'left']
    const left = ['left', 'right']
    expect(runs('balanced', 0.9, [left])).toMatchObject({ items: right, rule: 'balanced' })
    expect(runs('balanced', 0, [right, left, right])).toMatchObject({ items: left, rule: 'balanced' })
    expect(runs('balanced', 0.9, [right, left])).toMatchObject({ items: left })
    expect(runs('balanced', 0, [right, left])).toMatchObject({ items: right })
    expect(runs('balanced', 0, [['left'], right])).toMatchObject({ items: left })
    expect(runs('shuffled', 0, [right, right])).toMatchObject({ items: right, rule: 'shuffled' })
  })

  test('balanced keeps the difference between any two orders at one at most, whatever is drawn', () => {
    assert(
      property(array(double({ min: 0, max: 1, maxExcluded: true }), { maxLength: 40 }), (draws) => {
        const drawn: string[][] = []
        for (const draw of draws) drawn.push(balanced(['a', 'b', 'c'], drawn, () => draw))
        const firsts = ['a', 'b', 'c'].map((item) => drawn.filter((order) => order[0] === item).length)
        expect(Math.max(...firsts) - Math.min(...firsts)).toBeLessThanOrEqual(1)
      }),
    )
  })

  test('is not guessed before it is drawn', () => {
    expect(new Giving(handsIn('shuffled')).open().view().firstHand).toBeNull()
    expect(new Giving(handsIn('balanced')).open().view().firstHand).toBeNull()
    expect(new Giving(handsIn('left-first')).open().view().firstHand).toEqual({
      hand: 'left',
      rule: 'left-first',
    })
  })
})

const list = (section: string) =>
  madeProtocol(
    `
- for-each: task
  in: tasks
  ${section}
  steps:
    - { measured: seen, unit: "{score}", range: [0, 3] }
`,
    'lists: { tasks: [{ id: lift, level: 2 }, { id: grasp, level: 1 }, { id: pinch, level: 1 }] }',
  )

const given = (section: string) => {
  const giving = new Giving(list(section)).begin()
  const order: string[] = []
  while (giving.where() !== 'end') {
    order.push(String(giving.view().step?.place.task))
    giving.measure(2)
  }
  return order
}

describe('lists', () => {
  test('come in the order of the file, without an event for it', () => {
    expect(given('')).toEqual(['lift', 'grasp', 'pinch'])
    expect(new Giving(list('')).begin().log.some(({ body }) => body.kind === 'ordered')).toBe(false)
  })

  test('come only where the condition holds', () => {
    expect(given('where: task.level == 1')).toEqual(['grasp', 'pinch'])
    expect(given('where: task.level > 5')).toEqual([])
  })

  test('are left out where the condition has no answer, and the view says so', () => {
    const protocol = madeProtocol(`
  - for-each: hand
    in: hands
    order: right-first
    where: hand.affected
    steps:
      - { measured: squeeze, unit: kgf, range: [0, 100] }
`)
    const giving = new Giving(protocol).begin(facts(arms('unknown', 'affected')))
    expect(giving.where()).toBe('squeeze at left: waiting')
    expect(giving.view().rules).toEqual([
      { rule: 'hand', place: { hand: 'right' }, did: 'nothing', text: '' },
    ])
  })

  test('the view counts the passes that there are', () => {
    const giving = new Giving(list('where: task.level == 1')).begin().measure(1)
    expect(giving.view().step?.passes).toEqual([
      { loop: 'task', list: 'tasks', id: 'pinch', number: 2, of: 2, text: null },
    ])
  })
})
