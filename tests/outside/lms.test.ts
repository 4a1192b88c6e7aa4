/** LMS against published examples and against its own centiles worked out backwards. */
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { lmsScore, lmsValue } from '../../protocols/scoring/statistics/lms.ts'

describe('published examples', () => {
  test('WHO growth standards: a girl of 365 days with 9 kg', () => {
    expect(lmsScore(9, { l: -0.2022, m: 8.9462, s: 0.12267 })).toBeCloseTo(0.048847, 6)
  })

  test('CDC growth charts: a boy of 9.5 months with 9.7 kg', () => {
    expect(lmsScore(9.7, { l: -0.1600954, m: 9.476500305, s: 0.11218624 })).toBeCloseTo(0.2074, 4)
  })

  test('a power of 0 is the logarithm: M exp(S) lies at z = 1', () => {
    expect(lmsScore(10 * Math.exp(0.2), { l: 0, m: 10, s: 0.2 })).toBeCloseTo(1, 14)
  })

  test('a power of 1 is mean and SD: z = (x - M) / (M S)', () => {
    expect(lmsScore(13, { l: 1, m: 10, s: 0.1 })).toBeCloseTo(3, 12)
  })
})

const curve = fc.record({
  l: fc.oneof(
    fc.constant(0),
    fc.double({ min: -3, max: 3, noNaN: true }),
    fc.double({ min: -1e-9, max: 1e-9, noNaN: true }),
  ),
  m: fc.double({ min: 0.1, max: 500, noNaN: true }),
  s: fc.double({ min: 0.02, max: 0.3, noNaN: true }),
})

describe('worked out backwards', () => {
  test('each of its own centiles gives back its z', () => {
    fc.assert(
      fc.property(curve, fc.double({ min: -3, max: 3, noNaN: true }), (lms, z) => {
        const value = lmsValue(z, lms)
        fc.pre(value !== null && 1 + lms.l * lms.s * z > 0.05)
        expect(Math.abs((lmsScore(value ?? 0, lms) ?? 99) - z)).toBeLessThan(1e-9)
      }),
    )
  })

  test('nothing jumps as L passes 0', () => {
    for (const x of [2, 9, 10, 11, 40]) {
      const [under, at, over] = [-1e-12, 0, 1e-12].map((l) => lmsScore(x, { l, m: 10, s: 0.15 }) ?? 99)
      expect(Math.abs((under ?? 0) - (at ?? 0))).toBeLessThan(1e-9)
      expect(Math.abs((over ?? 0) - (at ?? 0))).toBeLessThan(1e-9)
    }
  })

  test('there is nothing for values of 0 or less, and none beyond the end of the curve', () => {
    expect([lmsScore(0, { l: 1, m: 10, s: 0.1 }), lmsScore(-1, { l: 0, m: 10, s: 0.1 })]).toEqual([
      null,
      null,
    ])
    expect(lmsValue(-11, { l: 1, m: 10, s: 0.1 })).toBeNull()
  })
})
