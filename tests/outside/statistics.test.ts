/**
 * Distributions against published anchors and an independent reference library. "Reference" means mpmath 1.3.0
 * (an arbitrary-precision library) at 30 to 40 digits, run for this file: seen. Other sources stand beside their
 * values.
 */
import { describe, expect, test } from 'vitest'
import { percentileOf } from '../../protocols/scoring/percentile.ts'
import { normalCdf, normalQuantile, normalUpper } from '../../protocols/scoring/statistics/normal.ts'
import {
  noncentralityFor,
  noncentralTCdf,
  tCdf,
  tUpper,
} from '../../protocols/scoring/statistics/student-t.ts'

const off = (value: number | null, reference: number): number =>
  Math.abs((value ?? Number.NaN) / reference - 1)

describe('the normal distribution', () => {
  test.each([
    [0.5, 0.3085375387259869],
    [1, 0.15865525393145705],
    [2, 0.02275013194817921],
    [3, 0.0013498980316300946],
    [5, 2.866515718791939e-7],
    [8, 6.220960574271784e-16],
    [20, 2.7536241186062337e-89],
    [37, 5.725571222524577e-300],
  ])('beyond %d lies what the reference says, to 1e-12', (z, tail) => {
    expect(off(normalUpper(z), tail)).toBeLessThan(1e-12)
    expect(off(normalCdf(-z), tail)).toBeLessThan(1e-12)
  })

  // Printed in every table of the normal distribution; digits recomputed to 30 places (statistics collection, seen).
  test.each([
    [0.975, 1.959963984540054],
    [0.95, 1.6448536269514722],
    [0.5, 0],
    [0.25, -0.6744897501960817],
  ])('the quantile of %d is %d', (p, z) => {
    expect(normalQuantile(p)).toBeCloseTo(z, 14)
  })
})

describe("Student's t", () => {
  test.each([
    [2, 1, 0.14758361765043326],
    [2, 7, 0.04280966428148804],
    [3.05, 7, 0.009291608432439924],
    [2.5, 27, 0.00939712284521185],
    [10, 5, 8.54737878714818e-5],
    [1.5, 49, 0.07001530931581774],
    [4, 1000, 3.400495960439079e-5],
    [1, 1e5, 0.158656463782055],
    [2.5, 1e7, 0.006209673268289235],
    [0.001, 3, 0.49963244748473046],
  ])('beyond %d with %d degrees of freedom lies what the reference says, to 1e-10', (t, df, tail) => {
    expect(off(tUpper(t, df), tail)).toBeLessThan(1e-10)
    expect(off(tCdf(-t, df), tail)).toBeLessThan(1e-10)
  })

  // Quantiles of printed t tables; digits recomputed to 30 places (statistics collection, seen).
  test.each([
    [2.2281388519863, 10],
    [2.7764451051978, 4],
  ])('2.5 %% lie beyond %d with %d degrees of freedom', (t, df) => {
    expect(off(tUpper(t, df), 0.025)).toBeLessThan(1e-12)
  })

  test.each([
    [1.5, 10, 1, 0.6695168482153547],
    [-3, 5, 2, 6.73318853123727e-5],
    [0.5, 1, 0.3, 0.5361876885303859],
    [9, 27, 8, 0.717076144099965],
    [30, 120, 28, 0.8127227162185687],
    [-9.2, 27, -7, 0.09137995074855766],
    [4.2, 1, 3, 0.48706972593733905],
    [85, 799, 84, 0.6597310176121062],
  ])('the noncentral form at %d, %d, %d is what the reference says, to 1e-10', (t, df, delta, below) => {
    expect(off(noncentralTCdf(t, df, delta), below)).toBeLessThan(1e-10)
  })
})

describe('STD-INT-4 a small norm group uses the modified t: published worked examples', () => {
  // The example of a public R package for single cases (singcar): n 28, t -1.7243, one-tailed p .04804,
  // standardized score -1.75 with interval -2.34 to -1.15, percentile interval about 0.96 to 12.4: seen.
  const z = -1.7243 * Math.sqrt(29 / 28)

  test('the percentile is the one-tailed p', () => {
    expect(z).toBeCloseTo(-1.75, 2)
    const { percentile, definition } = percentileOf(z, 28)
    expect(definition).toBe('modified-t')
    expect((percentile ?? 0) / 100).toBeCloseTo(0.04804, 5)
  })

  test('its interval is the published one', () => {
    const [low, high] = [0.975, 0.025].map(
      (p) => (noncentralityFor(z * Math.sqrt(28), 27, p) ?? 0) / Math.sqrt(28),
    )
    expect(low).toBeCloseTo(-2.34, 2)
    expect(high).toBeCloseTo(-1.15, 2)
    // The published ends are those of the rounded -2.34 and -1.15, so one decimal is what they carry.
    const { interval } = percentileOf(z, 28)
    expect(interval?.[0]).toBeCloseTo(0.96, 1)
    expect(Math.abs((interval?.[1] ?? 0) - 12.4)).toBeLessThan(0.15)
  })

  // Controls 0 -2 5 2 1 3 -4 -2 and a case of 10: t(7) = 3.05, two-sided p .0185 (a public worked example, seen).
  test('the eight controls', () => {
    const controls = [0, -2, 5, 2, 1, 3, -4, -2]
    const mean = controls.reduce((sum, x) => sum + x, 0) / 8
    const sd = Math.sqrt(controls.reduce((sum, x) => sum + (x - mean) ** 2, 0) / 7)
    const t = (10 - mean) / sd / Math.sqrt(9 / 8)
    expect(t).toBeCloseTo(3.05, 2)
    expect(2 * (tUpper(t, 7) ?? 1)).toBeCloseTo(0.0185, 4)
    expect(percentileOf((10 - mean) / sd, 8).percentile).toBeCloseTo(100 * (1 - 0.0185 / 2), 2)
  })

  test('in a large group it tends to the normal curve', () => {
    for (const by of [-2.5, -1, 0.3, 2]) {
      const normal = percentileOf(by, null).percentile ?? 0
      const large = 100 * (tCdf(by / Math.sqrt(100_001 / 100_000), 99_999) ?? 0)
      expect(Math.abs(large - normal)).toBeLessThan(0.001)
      expect(percentileOf(by, 50).definition).toBe('normal')
      expect(percentileOf(by, 49).definition).toBe('modified-t')
    }
  })
})
