/** Inputs that have no answer: what is said instead, as data. */
import { describe, expect, test } from 'vitest'
import { blandAltman } from '../../protocols/scoring/statistics/bland-altman.ts'
import { quantile } from '../../protocols/scoring/statistics/descriptive.ts'
import { intraclass } from '../../protocols/scoring/statistics/intraclass.ts'
import { fleissKappa, kappa, weightsFor } from '../../protocols/scoring/statistics/kappa.ts'
import { leastSquares } from '../../protocols/scoring/statistics/least-squares.ts'
import { mannKendall } from '../../protocols/scoring/statistics/mann-kendall.ts'
import {
  detectableChange,
  standardErrorOfMeasurement,
} from '../../protocols/scoring/statistics/measurement-error.ts'
import { plainChange, regressionChange } from '../../protocols/scoring/statistics/reliable-change.ts'
import { shapiroWilk } from '../../protocols/scoring/statistics/shapiro-wilk.ts'
import { differenceOfCase, singleCase } from '../../protocols/scoring/statistics/single-case.ts'
import { theilSen } from '../../protocols/scoring/statistics/theil-sen.ts'
import { oneSidedFactor, twoSidedFactor } from '../../protocols/scoring/statistics/tolerance.ts'
import { isUndefined } from '../../protocols/scoring/statistics/undefined.ts'

describe('what has no value says why', () => {
  const flat = [5, 5, 5, 5]
  const days = [1, 2, 3, 4]
  test.each([
    ['SEM of a reliability above 1', standardErrorOfMeasurement(3, 1.1), 'out_of_range'],
    ['detectable change at a confidence of 1', detectableChange(3, 1), 'out_of_range'],
    ['reliable change without error', plainChange({ first: 1, second: 2 }, 3, 1), 'no_variance'],
    [
      'regression in a group of two',
      regressionChange({ first: 1, second: 2 }, { mean1: 0, sd1: 1, mean2: 0, sd2: 1, r: 0.5 }, 2),
      'too_few',
    ],
    ['a case in a group of one', singleCase(3, { mean: 2, sd: 1, n: 1 }), 'too_few'],
    ['a case in a group without spread', singleCase(3, { mean: 2, sd: 0, n: 9 }), 'no_variance'],
    ['a case that is no number', singleCase(Number.NaN, { mean: 2, sd: 1, n: 9 }), 'not_finite'],
    [
      'sides that go wholly together',
      differenceOfCase(1, 2, { x: { mean: 0, sd: 1 }, y: { mean: 0, sd: 1 }, r: 1, n: 9 }),
      'no_variance',
    ],
    ['ICC of one rater', intraclass([[1], [2]]), 'too_few'],
    ['ICC of rows of unlike length', intraclass([[1, 2], [3]]), 'unlike_length'],
    [
      'ICC without any variance',
      intraclass([
        [0.1, 0.1],
        [0.1, 0.1],
      ]),
      'no_variance',
    ],
    [
      'ICC of what is no number',
      intraclass([
        [1, Number.NaN],
        [3, 4],
      ]),
      'not_finite',
    ],
    [
      'kappa of one category',
      kappa(
        [
          [9, 0],
          [0, 0],
        ],
        weightsFor('plain', 2),
      ),
      'no_variance',
    ],
    [
      'kappa of nobody',
      kappa(
        [
          [0, 0],
          [0, 0],
        ],
        weightsFor('plain', 2),
      ),
      'too_few',
    ],
    [
      'kappa of unlike numbers of ratings',
      fleissKappa([
        [2, 1],
        [1, 1],
      ]),
      'unlike_length',
    ],
    ['limits of one pair', blandAltman([1], [2]), 'too_few'],
    ['a line through one time', leastSquares(flat, days), 'no_variance'],
    ['a line through one point', leastSquares([1], [2]), 'too_few'],
    ['a robust line through one time', theilSen(flat, days), 'no_variance'],
    ['a trend of one point', mannKendall([1], [1]), 'too_few'],
    ['Shapiro-Wilk of two', shapiroWilk([1, 2]), 'too_few'],
    ['Shapiro-Wilk of values all the same', shapiroWilk(flat), 'no_variance'],
    ['Shapiro-Wilk of too many', shapiroWilk(Array.from({ length: 5001 }, (_, i) => i)), 'too_many'],
    ['a tolerance factor for a share of 1', twoSidedFactor(9, 1, 0.95), 'out_of_range'],
    ['a tolerance factor of one value', oneSidedFactor(1, 0.9, 0.95), 'too_few'],
  ])('%s', (_what, answer, why) => {
    expect(answer).toEqual({ undefined: why })
  })

  test('what is defined only in part leaves the rest null', () => {
    expect(leastSquares([0, 1], [1, 3])).toMatchObject({ slope: 2, standardError: null, p: null })
    expect(leastSquares([0, 1, 2], [1, 3, 5])).toMatchObject({ standardError: 0, t: null, p: null })
    expect(blandAltman([1, 2, 3], [0, 1, 2])).toMatchObject({
      bias: 1,
      sd: 0,
      lower: { value: 1 },
      upper: { value: 1 },
    })
    expect(mannKendall(days, flat)).toMatchObject({ s: 0, z: null, p: null })
    expect(theilSen([1, 2], [1, 2])).toMatchObject({ slope: 1, interval: [null, null] })
    // One value for both: the pairs agree, and nothing can be tested.
    expect(
      kappa(
        [
          [5, 0],
          [0, 5],
        ],
        weightsFor('linear', 2),
      ),
    ).toMatchObject({ value: 1, standardError: 0 })
    expect(quantile([], 0.5)).toBeNull()
  })

  test('four points in perfect order can’t reach .05: p is .083', () => {
    const found = mannKendall(days, days)
    const p = isUndefined(found) ? null : found.p
    expect((p ?? 0) * 24).toBeCloseTo(2, 10)
  })
})
