import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { checkExpression, evaluate, parseExpression } from '../../protocols/language/expressions/index.ts'
import { type Cell, ENVIRONMENT, placeWith } from './worked.ts'

const TOKENS = [
  'run.time',
  'run.rows',
  'run.outcome',
  'rate',
  'dominant',
  'force',
  'mass',
  'runs',
  'fill',
  'task.id',
  'task.mass',
  'steady',
  'r',
  'r.time',
  '1',
  '0',
  '2.5',
  "'done'",
  "'right'",
  'null',
  'true',
  'false',
  '(',
  ')',
  '[',
  ']',
  '{',
  '}',
  ',',
  '.',
  '?',
  ':',
  '+',
  '-',
  '*',
  '/',
  '%',
  '==',
  '!=',
  '<',
  '>=',
  '&&',
  '||',
  '!',
  ' in ',
  'min(',
  'mean(',
  'median(',
  'given(',
  'last(',
  'lowest(',
  'count(',
  'sd(',
  'only(',
  'trimmed(',
  'has(',
  'size(',
  'quantity(',
  'in_unit(',
  '.filter(r, ',
  '.map(r, ',
  '.all(r, ',
  '.exists_one(r, ',
  '.size()',
  ".contains('a')",
  '[0]',
  '"',
  "'",
  '\\',
  '\u0000',
  '😀',
  '/*',
  '//',
  '1e999',
  '0x',
  "b'x'",
  '1u',
  '?.',
  'void',
] as const

const cell: fc.Arbitrary<Cell> = fc.oneof(
  fc.constant(null),
  fc.constantFrom(0, -0, 1, 19.05, 1e308, 5e-324),
  fc.integer({ min: 0, max: 90 }).map((over) => ({ over })),
)

/** Sound pieces put together at random, so that many expressions get as far as being evaluated. */
const { number, truth } = fc.letrec<{ number: string; truth: string }>((tie) => ({
  number: fc.oneof(
    { depthSize: 'medium' },
    fc.constantFrom(
      '1',
      '0',
      'runs',
      'first(run.time)',
      'last(run.time)',
      'min(run.time)',
      'median(run.time)',
      'count(run.time)',
      'sd(run.time)',
      'spread(run.time)',
      'only(run.time)',
      'rate[dominant]',
      'rate.left',
      'task.mass',
      'sum(lowest(run.time, 2))',
      'mean(given(run.time))',
      'run.time[1]',
      '1e308',
      'size(task.id)',
    ),
    fc
      .tuple(tie('number'), fc.constantFrom('*', '/', '%', '+', '-'), tie('number'))
      .map(([a, o, b]) => `(${a} ${o} ${b})`),
    fc.tuple(tie('truth'), tie('number'), tie('number')).map(([t, a, b]) => `(${t} ? ${a} : ${b})`),
    tie('number').map((a) => `-(${a})`),
    tie('truth').map((t) => `count(run.rows.filter(r, ${t}))`),
    tie('number').map((a) => `mean(run.time.map(r, ${a}))`),
  ),
  truth: fc.oneof(
    { depthSize: 'medium' },
    fc.constantFrom(
      'steady',
      "task.role == 'hardest'",
      "r.outcome == 'done'",
      'has(task.mass)',
      'dominant == null',
      "run.outcome.exists(r, r == 'refused')",
    ),
    fc
      .tuple(tie('number'), fc.constantFrom('<', '<=', '==', '!=', '>', '>='), tie('number'))
      .map(([a, o, b]) => `(${a} ${o} ${b})`),
    fc
      .tuple(tie('truth'), fc.constantFrom('&&', '||', '=='), tie('truth'))
      .map(([a, o, b]) => `(${a} ${o} ${b})`),
    tie('truth').map((t) => `!(${t})`),
    fc
      .tuple(fc.constantFrom('all', 'exists', 'exists_one'), tie('truth'))
      .map(([m, t]) => `run.rows.${m}(r, ${t})`),
    fc.tuple(tie('number'), tie('number')).map(([a, b]) => `(${a} in [${b}, 3])`),
  ),
}))

function outcomeOf(source: string, times: readonly Cell[]): string {
  const parsed = parseExpression(source)
  const { expression, problems } =
    parsed.tree === null
      ? { expression: null, problems: parsed.problems }
      : checkExpression(source, parsed.tree, ENVIRONMENT)
  if (expression === null) {
    const inside = problems.every(
      ({ start, end, message, mend }) =>
        0 <= start && start <= end && end <= source.length && message !== '' && mend !== '',
    )
    return problems.length > 0 && inside ? 'told' : 'untold'
  }
  const place = placeWith(times)
  const { value, missing } = evaluate(expression, { read: (name) => place[name] ?? null }, { steps: 5000 })
  if (value === null) return missing === null ? 'missing without a reason' : 'missing'
  const isNumber = typeof value === 'object' && 'n' in value
  return isNumber && !Number.isFinite((value as { n: number }).n) ? 'not a number' : 'value'
}

test('whatever is written, it is read or its problem is told inside the source; nothing throws', () => {
  const source = fc.oneof(
    fc.array(fc.constantFrom(...TOKENS), { maxLength: 14 }).map((all) => all.join('')),
    fc.string(),
  )
  fc.assert(
    fc.property(source, fc.array(cell, { maxLength: 4 }), (written, times) => {
      expect(['told', 'missing', 'value']).toContain(outcomeOf(written, times))
    }),
    { numRuns: 1500 },
  )
})

test('whatever was measured, a sound expression gives a value or the reason for none, never NaN', () => {
  const seen = new Set<string>()
  fc.assert(
    fc.property(fc.oneof(number, truth), fc.array(cell, { maxLength: 4 }), (written, times) => {
      const outcome = outcomeOf(written, times)
      seen.add(outcome)
      expect(['told', 'missing', 'value']).toContain(outcome)
    }),
    { numRuns: 1500 },
  )
  expect(seen).toEqual(new Set(['told', 'missing', 'value']))
})
