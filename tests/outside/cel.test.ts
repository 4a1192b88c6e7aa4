/**
 * Expressions that mean the same in plain CEL, evaluated by another implementation: the evaluator of
 * `@marcbachmann/cel-js` 8.0.0 (installed; only its parser is shared). Left out is what this language does
 * differently on purpose: missing values, units, division by zero, whole numbers that overflow.
 */
import { evaluate as evaluateCel } from '@marcbachmann/cel-js'
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { checkExpression, evaluate, parseExpression } from '../../protocols/language/expressions/index.ts'

function ours(source: string): unknown {
  const parsed = parseExpression(source)
  if (parsed.tree === null) throw new Error(`${source}: ${parsed.problems[0].message}`)
  const { expression, problems } = checkExpression(source, parsed.tree, {})
  if (expression === null) throw new Error(`${source}: ${problems[0]?.message}`)
  return plain(evaluate(expression, { read: () => null }).value)
}

function plain(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(plain)
  return typeof value === 'object' && value !== null && 'n' in value ? value.n : value
}

const theirs = (source: string): unknown => {
  const value: unknown = evaluateCel(source)
  return typeof value === 'bigint' ? Number(value) : value
}

describe('written by hand', () => {
  test.each([
    '1.0 + 2.0 * 3.0',
    '(1.0 + 2.0) * 3.0',
    '10.0 / 4.0 - 1.0',
    '0.1 + 0.2 == 0.3',
    '-(2.0) * -3.0',
    '2.0 - 3.0 - 4.0',
    '16.0 / 4.0 / 2.0',
    '1.0 < 2.0 && 2.0 <= 2.0 && 3.0 > 2.0 && 2.0 >= 3.0',
    'true || false && false',
    '!true || !(false && true)',
    "1.0 < 2.0 ? 'a' : 'b'",
    "true ? false ? 'x' : 'y' : 'z'",
    "'near' in ['far', 'near']",
    '3.0 in [1.0, 2.0]',
    "'naïve 😀'.size() == 7",
    'size([1.0, 2.0, 3.0]) == 3',
    "'near_thick'.startsWith('near') && 'near_thick'.endsWith('thick') && 'near_thick'.contains('_')",
    '[1.0, 2.0, 3.0].all(x, x > 0.0)',
    '[1.0, 2.0, 3.0].exists(x, x > 2.5)',
    '[1.0, 2.0, 3.0].exists_one(x, x > 1.5)',
    '[1.0, 2.0, 3.0].filter(x, x > 1.5)',
    '[1.0, 2.0, 3.0].map(x, x * 2.0)',
    '[1.0, 2.0, 3.0].map(x, x > 1.5, x + 1.0)',
    '[[1.0, 2.0], [3.0]].map(x, x.filter(y, y > 1.0))',
    '[1.0, 2.0, 3.0][1]',
    "{'near': 1.0, 'far': 2.0}['far']",
    "{'near': 1.0}.near",
    "'near' in {'near': 1.0}",
    "r'a\\b' == 'a\\\\b'",
    "'\\u00e9' == 'é'",
    '1e3 == 1000.0',
    '[1.0].filter(x, x > 2.0).all(x, x > 1.0)',
    '[1.0].filter(x, x > 2.0).exists(x, x > 1.0)',
  ])('%s', (source) => {
    expect(ours(source)).toEqual(theirs(source))
  })
})

/** A number written as a CEL double. */
const double = fc.integer({ min: -2000, max: 2000 }).map((n) => (n / 8).toFixed(3))

const { number, truth } = fc.letrec<{ number: string; truth: string }>((tie) => ({
  number: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    double,
    fc
      .tuple(tie('number'), fc.constantFrom('+', '-', '*'), tie('number'))
      .map(([a, operator, b]) => `(${a} ${operator} ${b})`),
    tie('number').map((a) => `-(${a})`),
    fc.tuple(tie('truth'), tie('number'), tie('number')).map(([test_, a, b]) => `(${test_} ? ${a} : ${b})`),
    fc.tuple(tie('number'), tie('number'), fc.nat(1)).map(([a, b, at]) => `[${a}, ${b}][${at}]`),
  ),
  truth: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    fc.constantFrom('true', 'false'),
    fc
      .tuple(tie('number'), fc.constantFrom('<', '<=', '>', '>=', '==', '!='), tie('number'))
      .map(([a, operator, b]) => `(${a} ${operator} ${b})`),
    fc
      .tuple(tie('truth'), fc.constantFrom('&&', '||', '==', '!='), tie('truth'))
      .map(([a, o, b]) => `(${a} ${o} ${b})`),
    tie('truth').map((a) => `!(${a})`),
    fc
      .tuple(
        fc.array(tie('number'), { minLength: 1, maxLength: 3 }),
        fc.constantFrom('all', 'exists', 'exists_one'),
        double,
      )
      .map(([items, macro, limit]) => `[${items.join(', ')}].${macro}(x, x < ${limit})`),
    fc
      .tuple(tie('number'), fc.array(double, { minLength: 1, maxLength: 3 }))
      .map(([a, all]) => `(${a} in [${all.join(', ')}])`),
  ),
}))

test('made up at random, numbers and conditions alike', () => {
  fc.assert(
    fc.property(fc.oneof(number, truth), (source) => {
      fc.pre(source.length < 2000)
      expect(ours(source)).toEqual(theirs(source))
    }),
    { numRuns: 300 },
  )
})
