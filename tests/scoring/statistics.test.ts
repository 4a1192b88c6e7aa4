import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { percentileOf } from '../../protocols/scoring/percentile.ts'
import { incompleteBeta } from '../../protocols/scoring/statistics/beta.ts'
import { normalCdf, normalQuantile, normalUpper } from '../../protocols/scoring/statistics/normal.ts'
import {
  noncentralityFor,
  noncentralTCdf,
  tCdf,
  tUpper,
} from '../../protocols/scoring/statistics/student-t.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const df = fc.integer({ min: 1, max: 2000 })

describe('identities hold over the whole range', () => {
  test('both tails make one', () => {
    fc.assert(
      fc.property(real(-30, 30), df, (x, v) => {
        expect(normalCdf(x) + normalUpper(x)).toBeCloseTo(1, 13)
        expect((tCdf(x, v) ?? 0) + (tUpper(x, v) ?? 0)).toBeCloseTo(1, 12)
      }),
    )
  })

  test('the quantile undoes the distribution', () => {
    fc.assert(
      fc.property(real(-8, 8), (z) => {
        const p = normalCdf(z)
        fc.pre(p > 0 && p < 1 - 1e-9)
        expect(normalQuantile(p) ?? Number.NaN).toBeCloseTo(z, 5)
        expect(normalCdf(normalQuantile(p) ?? Number.NaN) / p).toBeCloseTo(1, 11)
      }),
    )
  })

  test('the incomplete beta function is symmetric and rises', () => {
    fc.assert(
      fc.property(real(0.1, 500), real(0.1, 500), real(0.001, 0.999), (a, b, x) => {
        const value = incompleteBeta(a, b, x, 1 - x)
        expect(value).toBeGreaterThanOrEqual(0)
        expect(value).toBeLessThanOrEqual(1 + 1e-12)
        expect(value + incompleteBeta(b, a, 1 - x, x)).toBeCloseTo(1, 9)
      }),
    )
  })

  test('without noncentrality it is the central t, and its root gives the probability back', () => {
    fc.assert(
      fc.property(real(-6, 6), fc.integer({ min: 1, max: 300 }), real(0.01, 0.99), (t, v, p) => {
        expect(noncentralTCdf(t, v, 0)).toBeCloseTo(tCdf(t, v) ?? Number.NaN, 10)
        const delta = noncentralityFor(t, v, p) ?? Number.NaN
        expect(noncentralTCdf(t, v, delta)).toBeCloseTo(p, 9)
      }),
      { numRuns: 40 },
    )
  })
})

describe('a percentile', () => {
  test('rises with z, lies inside its interval, and a larger group narrows that', () => {
    fc.assert(
      fc.property(real(-4, 4), fc.integer({ min: 3, max: 400 }), (z, n) => {
        const here = percentileOf(z, n)
        const above = percentileOf(z + 0.01, n)
        expect(above.percentile ?? 0).toBeGreaterThan(here.percentile ?? 0)
        const [low = 0, high = 0] = here.interval ?? []
        const point = 100 * normalCdf(z)
        expect(low).toBeLessThan(point)
        expect(high).toBeGreaterThan(point)
        const [l = 0, h = 0] = percentileOf(z, n * 4).interval ?? []
        expect(h - l).toBeLessThan(high - low)
      }),
      { numRuns: 40 },
    )
  })

  test('mirrors: z above and z below are as far from the middle', () => {
    fc.assert(
      fc.property(real(0, 5), fc.integer({ min: 2, max: 90 }), (z, n) => {
        const up = percentileOf(z, n)
        const down = percentileOf(-z, n)
        expect((up.percentile ?? 0) + (down.percentile ?? 0)).toBeCloseTo(100, 9)
        expect((up.interval?.[0] ?? 0) + (down.interval?.[1] ?? 0)).toBeCloseTo(100, 7)
      }),
      { numRuns: 40 },
    )
  })
})

describe('what is undefined is null, never NaN', () => {
  test.each([
    ['a share of 0', normalQuantile(0)],
    ['a share of 1', normalQuantile(1)],
    ['a share that is none', normalQuantile(Number.NaN)],
    ['no degrees of freedom', tUpper(1, 0)],
    ['t that is none', tUpper(Number.NaN, 3)],
    ['noncentral t without degrees of freedom', noncentralTCdf(1, 0, 1)],
    ['noncentral t at infinity', noncentralTCdf(Number.POSITIVE_INFINITY, 3, 1)],
    ['a root for a share of 1', noncentralityFor(1, 3, 1)],
    ['a percentile in a group of one', percentileOf(1, 1).percentile],
    ['an interval in a group of one', percentileOf(1, 1).interval],
    ['an interval in a group of unknown size', percentileOf(1, null).interval],
  ])('%s', (_what, value) => {
    expect(value).toBeNull()
  })

  test('the ends of t are certain', () => {
    expect([tUpper(Number.POSITIVE_INFINITY, 3), tUpper(Number.NEGATIVE_INFINITY, 3)]).toEqual([0, 1])
  })
})
