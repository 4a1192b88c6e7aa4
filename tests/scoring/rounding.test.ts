import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { rational, scaled, toNumber } from '../../protocols/decimal.ts'
import { convert, unitFactor } from '../../protocols/language/units.ts'
import { placesOf, round, shownValue } from '../../protocols/scoring/rounding.ts'

describe('rounding comes once, last: half away from zero on the decimal that is shown', () => {
  test.each([
    [1.005, 2, '1.01'],
    [-1.005, 2, '-1.01'],
    [2.675, 2, '2.68'],
    [0.5, 0, '1'],
    [1.5, 0, '2'],
    [2.5, 0, '3'],
    [-2.5, 0, '-3'],
    [1.0049999, 2, '1.00'],
    [19.95, 1, '20.0'],
    [0.05, 1, '0.1'],
    [0.04999, 1, '0.0'],
    [-0.04, 1, '0.0'],
    [0, 1, '0.0'],
    [-0, 1, '0.0'],
    [100, 2, '100.00'],
    [1e-7, 3, '0.000'],
    [1.23e21, 1, '1230000000000000000000.0'],
  ])('%d to %i places is %s', (value, decimals, shown) => {
    expect(shownValue(value, decimals)).toBe(shown)
  })

  const decimal = fc.tuple(fc.integer({ min: -10_000_000, max: 10_000_000 }), fc.integer({ min: 0, max: 4 }))

  test('laws: it is odd, settles, keeps order and is off by at most half a step', () => {
    fc.assert(
      fc.property(decimal, decimal, fc.integer({ min: 0, max: 3 }), ([n, p], [m, q], places) => {
        const x = n / 10 ** p
        const y = m / 10 ** q
        expect(round(-x, places)).toBe(round(x, places) === 0 ? 0 : -round(x, places))
        expect(round(round(x, places), places)).toBe(round(x, places))
        expect(Math.sign(x - y) * (round(x, places) - round(y, places))).toBeGreaterThanOrEqual(0)
        expect(Math.abs(round(x, places) - x)).toBeLessThanOrEqual(0.5 / 10 ** places + 1e-9)
      }),
    )
  })

  test('a tie written by hand always goes away from zero', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 99_999 }), fc.integer({ min: 0, max: 4 }), (n, places) => {
        const tie = Number(`${n}5e-${places + 1}`)
        expect(shownValue(tie, places)).toBe(
          (BigInt(n) + 1n)
            .toString()
            .padStart(places + 1, '0')
            .replace(new RegExp(`(\\d{${places}})$`), places === 0 ? '$1' : '.$1'),
        )
      }),
    )
  })
})

describe('STD-UNIT-3 kgf, lbf and N convert by the constants as defined', () => {
  test.each([
    ['kgf', 'N', 9.80665],
    ['[lbf_av]', 'N', 4.4482216152605],
    ['[lb_av]', 'kg', 0.45359237],
    ['[lbf_av]', 'kgf', 0.45359237],
    ['min', 's', 60],
    ['ms', 's', 0.001],
  ])('1 %s is %s × %d', (from, to, factor) => {
    expect(unitFactor(from, to)).toBe(factor)
    expect(convert(1, from, to)).toBe(factor)
  })

  test('there and back gives the reading again, as it was written', () => {
    const reading = fc.integer({ min: 0, max: 2000 }).map((n) => n / 10)
    const unit = fc.constantFrom('kgf', '[lbf_av]', 'N', 'gf')
    fc.assert(
      fc.property(reading, unit, unit, (value, from, to) => {
        const back = convert(convert(value, from, to) ?? Number.NaN, to, from) ?? Number.NaN
        expect(shownValue(back, 9)).toBe(shownValue(value, 9))
      }),
    )
  })

  test('a mass is no force', () => {
    expect([unitFactor('kg', 'kgf'), unitFactor('[lb_av]', '[lbf_av]'), convert(1, 'kg', 'N')]).toEqual([
      null,
      null,
      null,
    ])
  })
})

test('every double is the decimal it is shown as', () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (x) => {
      expect(toNumber(rational(x))).toBe(x === 0 ? 0 : x)
      expect(scaled(x, { num: 1n, den: 1n })).toBe(x === 0 ? 0 : x)
    }),
  )
})

describe('a figure of a table', () => {
  test.each([
    [37.08, 1, '37.08'],
    [164.75, 0, '164.75'],
    [180, 0, '180'],
    [50, 1, '50.0'],
    // Pounds-force in kilograms-force are not written with any number of decimals: as many as the score has.
    [18 * 0.45359237, 1, '8.2'],
  ])('%d of a score with %d decimals is shown as %s', (figure, decimals, shown) => {
    expect(shownValue(figure, placesOf(figure, decimals))).toBe(shown)
  })
})
