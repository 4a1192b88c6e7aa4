/**
 * Statistics against published worked examples. Each names its paper; "seen" says that data or result were read in a
 * public source, "memory" that they are quoted as remembered and were worked out anew by hand.
 */
import { describe, expect, test } from 'vitest'
import { blandAltman } from '../../protocols/scoring/statistics/bland-altman.ts'
import { type IntraclassForm, intraclass } from '../../protocols/scoring/statistics/intraclass.ts'
import { fleissKappa, kappa, weightsFor } from '../../protocols/scoring/statistics/kappa.ts'
import { mannKendall } from '../../protocols/scoring/statistics/mann-kendall.ts'
import {
  detectableChange,
  standardErrorOfMeasurement,
} from '../../protocols/scoring/statistics/measurement-error.ts'
import { plainChange } from '../../protocols/scoring/statistics/reliable-change.ts'
import { shapiroWilk } from '../../protocols/scoring/statistics/shapiro-wilk.ts'
import { singleCase } from '../../protocols/scoring/statistics/single-case.ts'
import { mean, standardDeviation } from '../../protocols/scoring/statistics/descriptive.ts'
import { theilSen } from '../../protocols/scoring/statistics/theil-sen.ts'
import { oneSidedFactor, twoSidedFactor } from '../../protocols/scoring/statistics/tolerance.ts'
import { isUndefined, type Undefined } from '../../protocols/scoring/statistics/undefined.ts'

function defined<T>(answer: T | Undefined): T {
  if (typeof answer === 'object' && answer !== null && isUndefined(answer)) throw new Error(answer.undefined)
  return answer as T
}

/** As printed: to the last printed digit. */
const asPrinted = (value: number | null, digits: number): string => (value ?? Number.NaN).toFixed(digits)

describe('intraclass correlations: Shrout & Fleiss 1979, Psychol Bull 86:420, table 2 and its results (seen)', () => {
  const table = [
    [9, 2, 5, 8],
    [6, 1, 3, 2],
    [8, 4, 6, 8],
    [7, 1, 2, 6],
    [10, 5, 6, 9],
    [6, 2, 4, 7],
  ]
  const found = defined(intraclass(table))

  test('mean squares', () => {
    const { subjects, within, raters, residual } = found.squares
    expect([subjects, within, raters, residual].map((ms) => asPrinted(ms, 2))).toEqual([
      '11.24',
      '6.26',
      '32.49',
      '1.02',
    ])
  })

  test.each<[IntraclassForm, string]>([
    ['1,1', '0.17'],
    ['2,1', '0.29'],
    ['3,1', '0.71'],
    ['1,k', '0.44'],
    ['2,k', '0.62'],
    ['3,k', '0.91'],
  ])('ICC(%s) is %s', (form, printed) => {
    expect(asPrinted(found.forms[form].value, 2)).toBe(printed)
  })

  test.each<[IntraclassForm, string, string]>([
    ['1,1', '-0.13', '0.72'],
    ['2,1', '0.02', '0.76'],
    ['3,1', '0.34', '0.95'],
  ])('the interval of ICC(%s) is %s to %s', (form, low, high) => {
    expect(found.forms[form].interval.map((end) => asPrinted(end, 2))).toEqual([low, high])
  })
})

describe('limits of agreement: Bland & Altman 1986, Lancet 327:307, peak flow of 17 people (seen)', () => {
  const large = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427]
  const mini = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451]
  const found = defined(blandAltman(large, mini))

  test('mean difference -2.1 and SD 38.8 l/min, interval of the mean -22.0 to 17.8', () => {
    expect(asPrinted(found.bias, 1)).toBe('-2.1')
    expect(asPrinted(found.sd, 1)).toBe('38.8')
    // The paper works on from the rounded -2.1, 38.8 and t = 2.12: -22.0 to 17.8.
    expect(found.biasInterval[0]).toBeCloseTo(-22.0, 0)
    expect(found.biasInterval[1]).toBeCloseTo(17.8, 0)
  })

  test('two SDs around the mean are what the paper prints, -79.7 to 75.5, but for its rounding', () => {
    expect(Math.abs(found.bias - 2 * found.sd + 79.7)).toBeLessThan(0.2)
    expect(Math.abs(found.bias + 2 * found.sd - 75.5)).toBeLessThan(0.2)
  })

  test('with 1.96 SDs, as in the paper of 1999: -78.1 to 73.9', () => {
    expect([found.lower.value, found.upper.value].map((limit) => asPrinted(limit, 1))).toEqual([
      '-78.1',
      '73.9',
    ])
  })
})

describe('reliable change', () => {
  test('Jacobson & Truax 1991, J Consult Clin Psychol 59:12: 47.5 to 32.5, SD 7.5, r .80 (memory)', () => {
    const found = defined(plainChange({ first: 47.5, second: 32.5 }, 7.5, 0.8))
    expect(asPrinted(found.index, 2)).toBe('-3.16')
    expect(asPrinted(found.standardError, 2)).toBe('4.74')
    expect(asPrinted(defined(standardErrorOfMeasurement(7.5, 0.8)), 2)).toBe('3.35')
  })

  test('digital Box and Block Test: SEM 3.1, smallest detectable change 8.5 blocks (JMIR Rehabil Assist Technol 2023, seen)', () => {
    // The printed SEM is rounded: 8.59 comes of it.
    expect(Math.abs(defined(detectableChange(3.1, 0.95)) - 8.5)).toBeLessThan(0.1)
  })
})

describe('single case: Crawford & Howell 1998, Clin Neuropsychol 12:482', () => {
  test('controls 0 -2 5 2 1 3 -4 -2, case 10: t(7) = 3.05, p = .0185 (teaching example of a public package, seen)', () => {
    const controls = [0, -2, 5, 2, 1, 3, -4, -2]
    const sample = { mean: mean(controls) ?? 0, sd: standardDeviation(controls) ?? 0, n: controls.length }
    const found = defined(singleCase(10, sample))
    expect(asPrinted(found.t, 2)).toBe('3.05')
    expect(found.df).toBe(7)
    expect(asPrinted(found.p, 4)).toBe('0.0185')
  })

  test('n 28, z -1.75: t -1.7243, one-tailed p .04804, percentile interval about 0.96 to 12.4 (package singcar, seen)', () => {
    const found = defined(singleCase(-1.7243 * Math.sqrt(29 / 28), { mean: 0, sd: 1, n: 28 }))
    expect(asPrinted(found.percentile, 3)).toBe('4.804')
    expect(asPrinted(found.interval[0], 2)).toBe('0.96')
    expect(asPrinted(found.interval[1], 1)).toBe('12.4')
  })
})

describe('kappas', () => {
  // Fleiss, Cohen & Everitt, Psychol Bull 1969; 72: 323-327, the error under chance (memory). For two by two it makes z
  // the root of Pearson's chi-square without correction, here 50 (20·15 − 5·10)² / (25·25·30·20), worked out by hand.
  test('z of a two by two table is the root of its chi-square', () => {
    const table = [
      [20, 5],
      [10, 15],
    ]
    const { value, z } = defined(kappa(table, weightsFor('plain', 2)))
    expect(value).toBeCloseTo(0.4, 12)
    expect(z).toBeCloseTo(Math.sqrt(8 + 1 / 3), 10)
  })

  const cohen = [
    [88, 14, 18],
    [10, 40, 10],
    [2, 6, 12],
  ]

  test('Cohen 1960, Educ Psychol Meas 20:37, as proportions of 200: .492 (seen)', () => {
    expect(asPrinted(defined(kappa(cohen, weightsFor('plain', 3))).value, 3)).toBe('0.492')
  })

  test('Cohen 1968, Psychol Bull 70:213, disagreement weights 0 1 3 / 1 0 6 / 3 6 0: .348 (seen)', () => {
    const disagreement = [
      [0, 1, 3],
      [1, 0, 6],
      [3, 6, 0],
    ]
    const weights = disagreement.map((row) => row.map((each) => 1 - each / 6))
    expect(asPrinted(defined(kappa(cohen, weights)).value, 3)).toBe('0.348')
  })

  test('Fleiss, Cohen & Everitt 1969, Psychol Bull 72:323: .429 and .507, variance .003248 (data seen, result memory)', () => {
    const table = [
      [106, 10, 4],
      [22, 28, 10],
      [2, 12, 6],
    ]
    const weights = [
      [1, 0, 0.4444],
      [0, 1, 0.6667],
      [0.4444, 0.6667, 1],
    ]
    expect(asPrinted(defined(kappa(table, weightsFor('plain', 3))).value, 3)).toBe('0.429')
    const weighted = defined(kappa(table, weights))
    expect(asPrinted(weighted.value, 3)).toBe('0.507')
    expect(asPrinted(weighted.standardError ** 2, 6)).toBe('0.003248')
  })

  test('ten subjects by fourteen raters in five categories: .210 (common teaching table, seen)', () => {
    const table = [
      [0, 0, 0, 0, 14],
      [0, 2, 6, 4, 2],
      [0, 0, 3, 5, 6],
      [0, 3, 9, 2, 0],
      [2, 2, 8, 1, 1],
      [7, 7, 0, 0, 0],
      [3, 2, 6, 3, 0],
      [2, 5, 3, 2, 2],
      [6, 5, 2, 1, 0],
      [0, 2, 2, 3, 7],
    ]
    expect(asPrinted(defined(fleissKappa(table)).value, 3)).toBe('0.210')
  })
})

describe('trend: Sen 1968, J Am Stat Assoc 63:1379 (seen)', () => {
  const times = [1, 2, 3, 4, 10, 12, 18]
  const values = [9, 15, 19, 20, 45, 55, 78]

  test('slope 4, intercept of the medians 4, joint intercept 6', () => {
    const { slope, intercept } = defined(theilSen(times, values))
    expect([slope, intercept.separate, intercept.joint]).toEqual([4, 4, 6])
  })

  test('every pair rises: S = 21, exact p = 2/5040', () => {
    const found = defined(mannKendall(times, values))
    expect([found.s, found.method]).toEqual([21, 'exact'])
    expect((found.p ?? 0) * 5040).toBeCloseTo(2, 9)
  })
})

describe('samples', () => {
  test('Shapiro & Wilk 1965, Biometrika 52:591, weights of 11 men: W .79 (seen; AS R94: .788815, p .006704)', () => {
    const found = defined(shapiroWilk([148, 154, 158, 160, 161, 162, 166, 170, 182, 195, 236]))
    expect(asPrinted(found.w, 6)).toBe('0.788815')
    expect(asPrinted(found.p, 6)).toBe('0.006704')
  })

  test('NIST/SEMATECH handbook 7.2.6.3, n 43, share .90, confidence .99: two-sided 2.2173 by approximation (seen)', () => {
    // The handbook prints Howe's approximation; the exact factor lies within 0.3 % of it.
    expect(Math.abs(defined(twoSidedFactor(43, 0.9, 0.99)) / 2.2173 - 1)).toBeLessThan(0.003)
    // One-sided, Natrella's approximation 1.8752; exact 1.8740.
    expect(asPrinted(defined(oneSidedFactor(43, 0.9, 0.99)), 4)).toBe('1.8740')
  })
})
