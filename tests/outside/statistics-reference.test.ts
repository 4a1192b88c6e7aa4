/**
 * Statistics against reference libraries: R and its packages psych and vcd, run by `regenerate.R` beside this file,
 * which has the versions in `statistics-reference.json` (seen). Where R's own accuracy ends earlier than ours (its
 * noncentral t, F near zero), the anchors are from mpmath 1.3.0 at 40 digits (seen).
 */
import { describe, expect, test } from 'vitest'
import { blandAltman } from '../../protocols/scoring/statistics/bland-altman.ts'
import { chiSquareQuantile } from '../../protocols/scoring/statistics/chi-square.ts'
import { fQuantile } from '../../protocols/scoring/statistics/fisher-f.ts'
import {
  errorsOfMeasurement,
  INTRACLASS_FORMS,
  intraclass,
} from '../../protocols/scoring/statistics/intraclass.ts'
import { KAPPA_WEIGHTS, kappa, weightsFor } from '../../protocols/scoring/statistics/kappa.ts'
import { leastSquares } from '../../protocols/scoring/statistics/least-squares.ts'
import { mannKendall } from '../../protocols/scoring/statistics/mann-kendall.ts'
import { detectableChange } from '../../protocols/scoring/statistics/measurement-error.ts'
import { shapiroWilk } from '../../protocols/scoring/statistics/shapiro-wilk.ts'
import { noncentralTQuantile, tQuantile } from '../../protocols/scoring/statistics/student-t.ts'
import { theilSen } from '../../protocols/scoring/statistics/theil-sen.ts'
import { oneSidedFactor, twoSidedFactor } from '../../protocols/scoring/statistics/tolerance.ts'
import { isUndefined, type Undefined } from '../../protocols/scoring/statistics/undefined.ts'
import reference from './statistics-reference.json' with { type: 'json' }

/** The answer, which has to be there. */
function defined<T>(answer: T | Undefined): T {
  if (typeof answer === 'object' && answer !== null && isUndefined(answer)) throw new Error(answer.undefined)
  return answer as T
}

/** Relative error; a reference of zero must be met as zero. */
function off(value: number | null | undefined, expected: number | undefined): number {
  const wanted = expected ?? Number.NaN
  return Math.abs((value ?? Number.NaN) - wanted) / (wanted === 0 ? 1 : Math.abs(wanted))
}

describe('quantiles are what R gives, to 1e-10', () => {
  test('of t', () => {
    for (const { p, df, value } of reference.quantiles.t)
      expect(off(tQuantile(p, df), value)).toBeLessThan(1e-10)
  })
  test('of F', () => {
    for (const { p, df1, df2, value } of reference.quantiles.f)
      expect(off(fQuantile(p, df1, df2), value)).toBeLessThan(1e-10)
  })
  test('of chi-square', () => {
    for (const { p, df, value } of reference.quantiles.chiSquare)
      expect(off(chiSquareQuantile(p, df), value)).toBeLessThan(1e-10)
  })
  test('and where R stops earlier, what mpmath gives', () => {
    expect(off(tQuantile(1e-10, 3), -2225.7692846830932)).toBeLessThan(1e-10)
    expect(off(tQuantile(0.975, 4), 2.7764451051977943)).toBeLessThan(1e-10)
    expect(off(fQuantile(0.975, 5, 1e6), 2.566513016399324)).toBeLessThan(1e-10)
    expect(off(fQuantile(1e-6, 1, 2), 2.000000000002e-12)).toBeLessThan(1e-10)
    expect(off(fQuantile(1e-12, 1, 11), 1.643741831005708e-24)).toBeLessThan(1e-10)
    expect(off(chiSquareQuantile(1e-6, 3), 0.00024181048720124283)).toBeLessThan(1e-10)
    expect(off(noncentralTQuantile(0.975, 16, 8.081178), 12.980713057991085)).toBeLessThan(1e-10)
    expect(off(noncentralTQuantile(0.025, 7, 5.5), 3.0535954748651353)).toBeLessThan(1e-10)
    expect(off(noncentralTQuantile(0.99, 42, 8.4), 12.28372574190339)).toBeLessThan(1e-10)
    expect(off(defined(twoSidedFactor(43, 0.9, 0.99)), 2.222825173791124)).toBeLessThan(1e-10)
  })
})

describe('STD-INT-7 SEM, SDC and intraclass correlations equal a reference computation', () => {
  test.each(reference.intraclass)('the six forms and their intervals, table %#', (expected) => {
    const { squares, forms } = defined(intraclass(expected.table))
    INTRACLASS_FORMS.forEach((form, at) => {
      expect(off(forms[form].value, expected.value[at])).toBeLessThan(1e-10)
      expect(off(forms[form].interval[0], expected.lower[at])).toBeLessThan(1e-9)
      expect(off(forms[form].interval[1], expected.upper[at])).toBeLessThan(1e-9)
      expect(off(forms[form].f?.value, expected.f[at])).toBeLessThan(1e-10)
      expect(off(forms[form].f?.df1, expected.df1[at])).toBeLessThan(1e-10)
      expect(off(forms[form].f?.df2, expected.df2[at])).toBeLessThan(1e-10)
    })
    expect(off(squares.subjects, expected.subjects)).toBeLessThan(1e-10)
    expect(off(squares.raters, expected.raters)).toBeLessThan(1e-10)
    expect(off(squares.residual, expected.residual)).toBeLessThan(1e-10)
  })

  test.each(reference.intraclass)(
    'the SEM for agreement and for consistency, and its SDC, table %#',
    (expected) => {
      const { agreement, consistency } = errorsOfMeasurement(defined(intraclass(expected.table)).squares)
      expect(off(agreement, expected.semAgreement)).toBeLessThan(1e-10)
      expect(off(consistency, expected.semConsistency)).toBeLessThan(1e-10)
      // z.975 sqrt(2), from mpmath at 40 digits: seen.
      expect(
        off(defined(detectableChange(agreement, 0.95)), 2.771807648699381 * expected.semAgreement),
      ).toBeLessThan(1e-10)
      expect(
        off(defined(detectableChange(agreement, 0.9)), 2.326174307353345 * expected.semAgreement),
      ).toBeLessThan(1e-10)
    },
  )

  test.each(reference.agreement)('limits of agreement with exact intervals, series %#', (expected) => {
    const found = defined(blandAltman(expected.first, expected.second))
    expect(off(found.bias, expected.bias)).toBeLessThan(1e-10)
    expect(off(found.sd, expected.sd)).toBeLessThan(1e-10)
    expect(off(found.lower.value, expected.lower)).toBeLessThan(1e-10)
    expect(off(found.upper.value, expected.upper)).toBeLessThan(1e-10)
    found.biasInterval.forEach((end, at) => expect(off(end, expected.biasInterval[at])).toBeLessThan(1e-10))
    // R warns that its noncentral t hasn't full precision here.
    found.lower.interval.forEach((end, at) => expect(off(end, expected.lowerExact[at])).toBeLessThan(1e-8))
    found.upper.interval.forEach((end, at) => expect(off(end, expected.upperExact[at])).toBeLessThan(1e-8))
    expect(off(found.proportional?.slope, expected.slope)).toBeLessThan(1e-10)
    expect(off(found.proportional?.standardError, expected.slopeError)).toBeLessThan(1e-10)
    expect(off(found.proportional?.p, expected.p)).toBeLessThan(1e-10)
  })
})

describe('kappas', () => {
  test.each(reference.kappa)(
    'plain, linear and quadratic with their standard errors, table %#',
    (expected) => {
      for (const kind of KAPPA_WEIGHTS) {
        const found = defined(kappa(expected.table, weightsFor(kind, expected.table.length)))
        expect(off(found.value, expected[kind].value)).toBeLessThan(1e-10)
        expect(off(found.standardError, expected[kind].standardError)).toBeLessThan(1e-10)
      }
    },
  )
})

describe('lines and trends', () => {
  test.each(reference.trend)('least squares, Mann-Kendall and Theil-Sen, series %#', (expected) => {
    const { times, values } = expected
    const line = defined(leastSquares(times, values))
    expect(off(line.slope, expected.slope)).toBeLessThan(1e-10)
    expect(off(line.intercept, expected.intercept)).toBeLessThan(1e-10)
    line.interval.forEach((end, at) => expect(off(end, expected.interval[at])).toBeLessThan(1e-10))
    expect(off(line.p, expected.p)).toBeLessThan(1e-10)
    expect(off(line.residualSd, expected.residualSd)).toBeLessThan(1e-10)
    expect(off(defined(mannKendall(times, values)).p, expected.kendallP)).toBeLessThan(1e-10)
    expect(off(defined(theilSen(times, values)).slope, expected.theilSen)).toBeLessThan(1e-10)
    expect(off(defined(theilSen(times, values)).intercept.joint, expected.joint)).toBeLessThan(1e-10)
  })
})

describe('samples', () => {
  // AS R94 is a set of approximations: R rounds its W to about 1e-8 itself.
  test.each(reference.shapiro)('Shapiro-Wilk, sample %#', ({ values, w, p }) => {
    const found = defined(shapiroWilk(values))
    expect(off(found.w, w)).toBeLessThan(1e-8)
    expect(off(found.p, p)).toBeLessThan(1e-6)
  })

  test('tolerance factors', () => {
    for (const { n, share, confidence, twoSided, oneSided } of reference.tolerance) {
      expect(off(defined(twoSidedFactor(n, share, confidence)), twoSided)).toBeLessThan(1e-9)
      expect(off(defined(oneSidedFactor(n, share, confidence)), oneSided)).toBeLessThan(1e-8)
    }
  })
})
