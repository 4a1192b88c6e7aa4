import { expect, test } from 'vitest'
import { judgeUnit, unitFactor } from '../../protocols/language/units.ts'

test.each([
  ['lbs', '[lbf_av]'],
  ['sec', 's'],
  ['Nm', 'N.m'],
  ['KG', 'kg'],
  ['inch', '[in_i]'],
  ['mmHg', 'mm[Hg]'],
  ['°', 'deg'],
])('STD-UNIT-1 %s is no UCUM code and %s is offered instead', (written, meant) => {
  const verdict = judgeUnit(written)
  expect(verdict.valid).toBe(false)
  expect(verdict.suggestions).toContain(meant)
})

test.each(['__proto__', 'constructor', 'toString', 'valueOf'])(
  '%s, which every object has of itself, is no unit',
  (name) => expect(judgeUnit(name).valid).toBe(false),
)

test.each([
  's',
  'kgf',
  '[lbf_av]',
  '[lb_av]',
  'N.m',
  '{count}',
  '{score}',
  '1',
  '%',
  'deg',
  '{count}/min',
  'cm',
])('STD-UNIT-1 %s is a UCUM code', (code) => {
  expect(judgeUnit(code)).toEqual({ valid: true, suggestions: [] })
})

test.each(['', ' ', 'kg/', 'foo(', '((((', '{', '}', 's s', '\u0000', 'x'.repeat(500)])(
  'a broken unit %j is refused without an exception',
  (code) => {
    expect(judgeUnit(code).valid).toBe(false)
  },
)

test('units convert by the defined factor, and not across what they measure', () => {
  expect(unitFactor('[lbf_av]', 'kgf')).toBe(0.45359237)
  expect(unitFactor('kgf', 'N')).toBe(9.80665)
  expect(unitFactor('min', 's')).toBe(60)
  expect(unitFactor('kg', 'kgf')).toBeNull()
  expect(unitFactor('s', '{count}')).toBeNull()
})

test('a count, a score and a bare ratio are kept apart though UCUM would convert them', () => {
  expect(unitFactor('{count}', '{score}')).toBeNull()
  expect(unitFactor('{count}', '1')).toBeNull()
  expect(unitFactor('{count}', '{count}')).toBe(1)
})
