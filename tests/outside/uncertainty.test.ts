/**
 * Propagation of uncertainty against the examples of the guides themselves. Figures of JCGM 100:2008 (GUM) and JCGM
 * 101:2008 (its Supplement 1) are from memory where marked so, and worked out anew here; closed forms are derived beside
 * the check.
 */
import { describe, expect, test } from 'vitest'
import { normalQuantile } from '../../protocols/scoring/statistics/normal.ts'
import { rootOf } from '../../protocols/scoring/statistics/root.ts'
import { propagate } from '../../protocols/scoring/uncertainty/propagate.ts'

const inputsOf = (us: readonly number[]) => us.map((u, at) => ({ u, reading: String(at), moves: 1 as const }))

/** l = ls + d - ls (δα θ + α δθ), in nm and °C: ls 50 000 623, d 215, α 11.5e-6, θ -0.1, δα and δθ 0. */
const gauge = ([ls = 0, d = 0, da = 0, theta = 0, alpha = 0, dt = 0]: readonly number[]): number => {
  const standard = 50_000_623 + ls
  return standard + 215 + d - standard * (da * (-0.1 + theta) + (11.5e-6 + alpha) * dt)
}
const quotient = ([a = 0, b = 0]: readonly number[]) => (30 + a) / (40 + b)

describe('GUM H.1, calibration of an end gauge of 50 mm (figures from memory)', () => {
  const value = gauge([])

  test('with the terms of first order the combined standard uncertainty is 32 nm', () => {
    const found = propagate(gauge, value, inputsOf([25, 9.7, 0.58e-6, 0, 0, 0.029]), 7)
    expect(found?.method).toBe('formula')
    expect(((found?.half ?? 0) / 2).toFixed(0)).toBe('32')
  })

  test('with those of second order, of which the guide says that they matter here, it is simulated: 34 nm', () => {
    const found = propagate(gauge, value, inputsOf([25, 9.7, 0.58e-6, 0.41, 1.2e-6, 0.029]), 7)
    expect(found?.method).toBe('simulation')
    expect(Math.abs((found?.half ?? 0) / 2 - 34)).toBeLessThan(2)
  })
})

describe('GUM and its Supplement 1, other examples', () => {
  test('Supplement 1, 9.2.2: the sum of four standard normal quantities has the standard uncertainty 2.0 (memory)', () => {
    const found = propagate((errors) => errors.reduce((sum, e) => sum + e, 0), 0, inputsOf([1, 1, 1, 1]), 1)
    expect(found).toEqual({ half: 4, method: 'formula' })
  })

  test('GUM 5.1.6: relative uncertainties of a quotient add in squares', () => {
    const found = propagate(quotient, 30 / 40, inputsOf([0.03, 0.05]), 1)
    expect((found?.half ?? 0) / (2 * 0.75 * Math.hypot(0.03 / 30, 0.05 / 40))).toBeCloseTo(1, 5)
  })
})

describe('simulation against closed forms', () => {
  const COVERED = 0.954499736103642

  test('the least of two equal values: |min| of two normal errors is as far out as one of them', () => {
    // P(|min| <= h) = Φ(h)² - (1 - Φ(h))² = 2Φ(h) - 1: the same as for a single error.
    const found = propagate((errors) => Math.min(...errors), 0, inputsOf([0.1, 0.1]), 3)
    expect(found?.method).toBe('simulation')
    expect(Math.abs((found?.half ?? 0) / 0.2 - 1)).toBeLessThan(0.05)
  })

  test('the middle of three equal values', () => {
    // P(median <= h) = 3Φ² - 2Φ³, symmetric about 0.
    const p = rootOf((x) => 3 * x ** 2 - 2 * x ** 3 - (1 + COVERED) / 2, 0.7, 0.99) ?? 0
    const expected = 0.1 * (normalQuantile(p) ?? 0)
    const found = propagate(
      (errors) => errors.toSorted((a, b) => a - b)[1] ?? 0,
      0,
      inputsOf([0.1, 0.1, 0.1]),
      3,
    )
    expect(found?.method).toBe('simulation')
    expect(Math.abs((found?.half ?? 0) / expected - 1)).toBeLessThan(0.05)
  })

  test('the largest of five equal values', () => {
    // P(|max| <= h) = Φ(h)^5 - Φ(-h)^5.
    const h = rootOf((x) => cdf(x) ** 5 - cdf(-x) ** 5 - COVERED, 1, 4) ?? 0
    const found = propagate((errors) => Math.max(...errors), 0, inputsOf(Array(5).fill(0.1)), 3)
    expect(Math.abs((found?.half ?? 0) / (0.1 * h) - 1)).toBeLessThan(0.05)
  })
})

/** Φ by the midpoint rule on its density: independent of the product's own. */
function cdf(x: number): number {
  const steps = 20_000
  const width = (x + 9) / steps
  let sum = 0
  for (let at = 0; at < steps; at++) sum += Math.exp(-((-9 + (at + 0.5) * width) ** 2) / 2)
  return (sum * width) / Math.sqrt(2 * Math.PI)
}
