import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Cell, evaluated, placeWith, short } from './worked.ts'

describe('formulas give what a person works out by hand', () => {
  test.each([
    ['min(run.time)', 19.1],
    ['max(run.time)', 21],
    ['sum(run.time)', 60.6],
    ['mean(run.time)', 20.2],
    ['median(run.time)', 20.5],
    ['spread(run.time)', 1.9],
    ['sd([2, 4, 4, 4, 5, 5, 7, 9])', 2.138089935299395],
    ['trimmed([1, 2, 3, 4, 100], 0.2)', 3],
    ['trimmed([1, 2, 3, 4, 100], 0.19)', 22],
    ['first(run.time)', 20.5],
    ['last(run.time)', 21],
    ['first(run.time, 2)', [20.5, 19.1]],
    ['last(run.time, 2)', [19.1, 21]],
    ['lowest(run.time, 2)', [19.1, 20.5]],
    ['highest(run.time, 2)', [21, 20.5]],
    ['count(run.time)', 3],
    ['only([7])', 7],
    ['mean(rate)', 9],
    ['min(3, 1, 2)', 1],
    ['max(force, pull)', 10],
    ['median([1, 2, 3, 10])', 2.5],
    ['mean([0.1, 0.2, 0.3])', 0.2],
    ['sum([0.1, 0.2])', 0.3],
    ['rate[dominant] / rate.left', 1.25],
    ['7 / 2', 3.5],
    ['7 % 4', 3],
    ['-runs + 1', -3],
    ["in_unit(force, 'N')", 98.0665],
    ['first(run.time) < fill', true],
    ['first(run.time) + fill', 80.5],
    ["quantity(2, 'min') == 120", false],
    ["quantity(2, 'min') == quantity(120, 's')", true],
    ['runs == 4 ? 60 : 15', 60],
    ['runs in [1, 4]', true],
    ["task.role in ['easiest', 'hardest']", true],
    ["'right' in rate", true],
    ["task.id.startsWith('near') && task.id.endsWith('thick') && task.id.contains('_')", true],
    ["size('naïve 😀')", 7],
    ["{'near_thick': 1, 'far': 2}[task.id]", 1],
    ['run.rows.filter(r, r.time > 20).map(r, r.time)', [20.5, 21]],
    ['run.rows.map(r, r.time > 20, r.time + 1)', [21.5, 22]],
    ['run.time.all(t, t > 19)', true],
    ['run.time.exists(t, t > 20.9)', true],
    ['run.time.exists_one(t, t > 20)', false],
    ['run.time[1]', 19.1],
    ['run.time.size()', 3],
    ['has(task.role)', true],
    ['has(task.mass)', false],
    ['first(run.time) == null', false],
  ])('%s is %j', (source, value) => {
    expect(short(source)).toEqual(value)
  })

  test('a sum is the same in whatever order the rows came, to the last bit', () => {
    const times = fc.array(
      fc.integer({ min: 1, max: 99_999 }).map((n) => n / 100),
      { minLength: 1, maxLength: 12 },
    )
    fc.assert(
      fc.property(times, (given) => {
        for (const formula of ['sum', 'mean', 'median', 'trimmed'])
          for (const source of [formula === 'trimmed' ? 'trimmed(run.time, 0.1)' : `${formula}(run.time)`])
            expect(short(source, given)).toEqual(short(source, given.toReversed()))
      }),
    )
  })
})

describe('what is missing stays missing, and says why', () => {
  test.each([
    ['mean(run.time)', 'refused'],
    ['min(run.time)', 'refused'],
    ['sum(run.time) + 1', 'refused'],
    ['first(run.time)', 20],
    ['last(run.time)', 'refused'],
    ['last(run.time, 2)', [20, null]],
    ['mean(last(run.time, 2))', 'refused'],
    ['highest(run.time, 1)', 'refused'],
    ['count(run.time)', 2],
    ['count(given(run.time))', 1],
    ['mean(given(run.time))', 20],
    ['last(run.time) > 3', 'refused'],
    ['!(last(run.time) > 3)', 'refused'],
    ['last(run.time) > 3 ? 1 : 2', 'refused'],
    ['last(run.time) > 3 || true', true],
    ['true || last(run.time) > 3', true],
    ['last(run.time) > 3 && false', false],
    ['last(run.time) > 3 && true', 'refused'],
    ['last(run.time) == null', true],
    ['last(run.time) != null', false],
    ['has(run.rows[1].time)', false],
    ['run.rows.filter(r, r.time > 3)', 'refused'],
    ["count(run.rows.filter(r, r.outcome == 'done' && r.time > 3))", 1],
    ['run.time.exists(t, t > 3)', true],
    ['run.time.exists(t, t > 30)', 'refused'],
    ['run.time.all(t, t > 30)', false],
    ['run.time.all(t, t > 3)', 'refused'],
    ['30 in run.time', 'refused'],
    ['20 in run.time', true],
    ['task.mass > 3', 'no_property'],
    ['run.time[5]', 'no_such_row'],
    ['last(run.time, 3)', 'too_few'],
    ['lowest(given(run.time), 2)', 'too_few'],
    ['only(run.time)', 'not_only'],
    ['sd(given(run.time))', 'too_few'],
    ['force / 0', 'divided_by_zero'],
    ['force % 0', 'divided_by_zero'],
    ['0 / 0 > 1', 'divided_by_zero'],
    ['1e308 * 10', 'not_a_number'],
  ])('with a refused second run, %s is %j', (source, value) => {
    expect(short(source, [20, null])).toEqual(value)
  })

  test.each(['min', 'max', 'sum', 'mean', 'median', 'spread', 'sd', 'first', 'last', 'only'])(
    '%s of no rows is missing',
    (formula) => {
      expect(short(`${formula}(run.time)`, [])).toBe('no_rows')
    },
  )

  test('count alone makes no rows zero', () => {
    expect(short('count(run.time)', [])).toBe(0)
  })

  test('no formula over rows makes a number of a missing one', () => {
    const cells = fc.array(fc.oneof(fc.integer({ min: 0, max: 500 }), fc.constant(null)), {
      minLength: 1,
      maxLength: 8,
    })
    const formulas = ['min(run.time)', 'max(run.time)', 'sum(run.time)', 'mean(run.time)', 'median(run.time)']
    const more = ['spread(run.time)', 'sd(run.time)', 'trimmed(run.time, 0.2)', 'sum(run.time) * 2 - 1']
    fc.assert(
      fc.property(cells, fc.constantFrom(...formulas, ...more), (times, formula) => {
        const { value, missing } = evaluated(formula, placeWith(times))
        const isNumber = value !== null && Number.isFinite((value as { n: number }).n)
        expect(times.includes(null) ? missing?.code === 'refused' : isNumber !== (missing !== null)).toBe(
          true,
        )
      }),
    )
  })
})

const over = (n: number): Cell => ({ over: n })

describe('a bound is passed on where the order settles it', () => {
  test.each<[string, Cell[], unknown]>([
    ['min(run.time)', [20, over(60)], 20],
    ['min(run.time)', [over(60), over(90)], { over: 60 }],
    ['min(run.time)', [70, over(60)], { over: 60 }],
    ['min(run.time)', [60, over(60)], 60],
    ['max(run.time)', [20, over(60)], { over: 60 }],
    ['max(run.time)', [80, over(60)], { over: 80 }],
    ['sum(run.time)', [20, over(60)], { over: 80 }],
    ['mean(run.time)', [20, over(60)], { over: 40 }],
    ['median(run.time)', [20, 30, over(60)], 30],
    ['median(run.time)', [20, over(60), over(60)], { over: 60 }],
    ['median(run.time)', [20, 30, 40, over(60)], 35],
    ['median(run.time)', [20, over(30), 40], { over: 30 }],
    ['lowest(run.time, 2)', [over(60), 20, 30], [20, 30]],
    ['lowest(run.time, 2)', [over(25), 20, 30], 'bound'],
    ['highest(run.time, 2)', [over(60), 20, 30], [{ over: 60 }, 30]],
    ['highest(run.time, 1)', [over(25), 20, 30], 'bound'],
    ['spread(run.time)', [20, over(60)], 'bound'],
    ['sd(run.time)', [20, over(60)], 'bound'],
    ['last(run.time)', [20, over(60)], { over: 60 }],
    ['last(run.time) + 5', [20, over(60)], { over: 65 }],
    ['last(run.time) - 5', [20, over(60)], 'bound'],
    ['2 * last(run.time)', [20, over(60)], 'bound'],
    ['16 / last(run.time)', [20, over(60)], 'bound'],
    ['last(run.time) > 50', [20, over(60)], true],
    ['last(run.time) >= 60', [20, over(60)], true],
    ['last(run.time) < 60', [20, over(60)], false],
    ['last(run.time) > 60', [20, over(60)], 'bound'],
    ['last(run.time) < 70', [20, over(60)], 'bound'],
    ['last(run.time) == 50', [20, over(60)], false],
    ['last(run.time) == 60', [20, over(60)], 'bound'],
  ])('%s of %j is %j', (source, times, value) => {
    expect(short(source, times)).toEqual(value)
  })

  test('whatever the true values are, they agree with what was passed on', () => {
    const cells = fc.array(fc.tuple(fc.integer({ min: 0, max: 100 }), fc.boolean(), fc.nat(200)), {
      minLength: 1,
      maxLength: 7,
    })
    fc.assert(
      fc.property(cells, fc.constantFrom('min', 'max', 'sum', 'mean', 'median'), (given, formula) => {
        const known = given.map(([n, isOver]): Cell => (isOver ? { over: n } : n))
        const truth = given.map(([n, isOver, more]) => (isOver ? n + more : n))
        const said = evaluated(`${formula}(run.time)`, placeWith(known)).value as { n: number; over: boolean }
        const meant = evaluated(`${formula}(run.time)`, placeWith(truth)).value as { n: number }
        expect(said.over ? meant.n >= said.n : meant.n === said.n).toBe(true)
      }),
    )
  })
})

describe('a value remembers the trials it rests on', () => {
  test.each([
    ['first(run.time)', ['t1']],
    ['last(run.time, 2)', ['t2', 't3']],
    ['min(run.time)', ['t1', 't2', 't3']],
    ['last(run.time) > 20 ? first(run.time) : 0', ['t1', 't3']],
    ['force + 1', []],
  ])('%s rests on %j', (source, trials) => {
    expect([...evaluated(source).trials].sort()).toEqual(trials)
  })

  test('what is missing rests on the trial that has no value', () => {
    expect(evaluated('last(run.time)', placeWith([20, null]))).toEqual({
      value: null,
      missing: { code: 'refused', detail: { step: 'run' } },
      trials: ['t2'],
    })
  })
})

describe('evaluation is bounded', () => {
  test('STD-FMT-8 a long-running expression stops with a reason', () => {
    const digits = `[${Array.from({ length: 100 }, (_, i) => i).join(',')}]`
    const source = `${digits}.all(a, ${digits}.all(b, ${digits}.all(c, a + b + c >= 0)))`
    const before = performance.now()
    expect(evaluated(source, undefined, { limits: { steps: 10_000 } }).missing).toEqual({
      code: 'too_long',
      detail: { steps: 10_000 },
    })
    expect(evaluated(source).missing?.code).toBe('too_long')
    expect(performance.now() - before).toBeLessThan(2000)
  })

  test('STD-FMT-8 a pattern cannot run away: there are none', () => {
    expect(() => short("task.id.matches('(a+)+$')")).toThrow('not part of this language')
  })
})
