/** Expressions that mean the same in plain CEL: by hand, and made up at random. */
import * as fc from 'fast-check'

/**
 * Left out is what this language does differently on purpose: missing values, units, division by zero, whole numbers
 * that overflow.
 */
export const SHARED: readonly string[] = [
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
  "true ? (false ? 'x' : 'y') : 'z'",
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
  "'aÿ🐱'.size() == 3",
  "{'a': {'b': 2.0}}.a.b",
  "{'a': 1.0, 'b': 2.0}.a + {'a': 1.0, 'b': 2.0}['b']",
  'true || [1.0][7] > 0.0',
  '[1.0][7] > 0.0 || true',
  'false && [1.0][7] > 0.0',
  '[1.0][7] > 0.0 && false',
  '[[1.0], [2.0, 3.0]].map(x, size(x))',
  '[1.0, 2.0].exists(x, [2.0, 3.0].exists(y, x == y))',
  'true ? 1.0 : 2.0 > 1.0 ? 3.0 : 4.0',
  '1.0 + 2.0 < 4.0 == true',
  '!(1.0 > 2.0) && !false',
  '-1.0 - -1.0',
  '0x10 == 16',
  '7 % 3 == 1 && -7 % 3 == -1',
]

/** A number written as a CEL double. */
const double = fc.integer({ min: -2000, max: 2000 }).map((n) => (n / 8).toFixed(3))

export const { number, truth } = fc.letrec<{ number: string; truth: string }>((tie) => ({
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
