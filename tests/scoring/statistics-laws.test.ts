/** Laws that hold for every input. What has no value is in `statistics-undefined.test.ts`. */
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { blandAltman } from '../../protocols/scoring/statistics/bland-altman.ts'
import {
  chiSquareCdf,
  chiSquareQuantile,
  chiSquareUpper,
} from '../../protocols/scoring/statistics/chi-square.ts'
import { fQuantile, fUpper } from '../../protocols/scoring/statistics/fisher-f.ts'
import { INTRACLASS_FORMS, intraclass } from '../../protocols/scoring/statistics/intraclass.ts'
import { KAPPA_WEIGHTS, kappa, weightsFor } from '../../protocols/scoring/statistics/kappa.ts'
import { leastSquares } from '../../protocols/scoring/statistics/least-squares.ts'
import { mannKendall } from '../../protocols/scoring/statistics/mann-kendall.ts'
import {
  detectableChange,
  standardErrorOfMeasurement,
} from '../../protocols/scoring/statistics/measurement-error.ts'
import {
  plainChange,
  practiceAdjustedChange,
  regressionChange,
} from '../../protocols/scoring/statistics/reliable-change.ts'
import { shapiroWilk } from '../../protocols/scoring/statistics/shapiro-wilk.ts'
import { differenceOfCase, singleCase } from '../../protocols/scoring/statistics/single-case.ts'
import {
  noncentralTCdf,
  noncentralTQuantile,
  tCdf,
  tQuantile,
} from '../../protocols/scoring/statistics/student-t.ts'
import { theilSen } from '../../protocols/scoring/statistics/theil-sen.ts'
import { oneSidedFactor, twoSidedFactor } from '../../protocols/scoring/statistics/tolerance.ts'
import { isUndefined, type Undefined } from '../../protocols/scoring/statistics/undefined.ts'

/** The answer, or the case is none of those that the law speaks of. */
function where<T>(answer: T | Undefined): T {
  fc.pre(!(typeof answer === 'object' && answer !== null && isUndefined(answer)))
  return answer as T
}

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const share = real(0.0005, 0.9995)
/** Values with few digits, as tests give them: ties are common. */
const reading = fc.integer({ min: -400, max: 400 }).map((tenths) => tenths / 10)
const series = fc
  .array(fc.tuple(reading, reading), { minLength: 3, maxLength: 14 })
  .map((pairs) => ({ x: pairs.map(([x]) => x), y: pairs.map(([, y]) => y) }))
const table = fc
  .tuple(fc.integer({ min: 2, max: 8 }), fc.integer({ min: 2, max: 5 }))
  .chain(([n, k]) =>
    fc.array(fc.array(reading, { minLength: k, maxLength: k }), { minLength: n, maxLength: n }),
  )
const counts = fc
  .integer({ min: 2, max: 5 })
  .chain((c) =>
    fc.array(fc.array(fc.nat({ max: 20 }), { minLength: c, maxLength: c }), { minLength: c, maxLength: c }),
  )

/** How far two answers lie apart, as a part of their size where that is above 1; two without a value don't. */
const apart = (a: number | null, b: number | null): number => {
  if (a === null || b === null) return a === b ? 0 : Number.POSITIVE_INFINITY
  return Math.abs(a - b) / Math.max(1, Math.abs(a), Math.abs(b))
}

const runs = { numRuns: 60 }

describe('a quantile undoes its distribution', () => {
  test('of t, F, chi-square and noncentral t', () => {
    fc.assert(
      fc.property(share, real(0.5, 400), real(0.5, 400), real(-5, 5), (p, v, w, delta) => {
        expect(apart(tCdf(tQuantile(p, v) ?? Number.NaN, v), p)).toBeLessThan(1e-11)
        expect(apart(1 - (fUpper(fQuantile(p, v, w) ?? Number.NaN, v, w) ?? Number.NaN), p)).toBeLessThan(
          1e-10,
        )
        expect(apart(chiSquareCdf(chiSquareQuantile(p, v) ?? Number.NaN, v), p)).toBeLessThan(1e-11)
        expect(
          apart(noncentralTCdf(noncentralTQuantile(p, v + 1, delta) ?? Number.NaN, v + 1, delta), p),
        ).toBeLessThan(1e-10)
      }),
      { numRuns: 25 },
    )
  })

  test('t is symmetric, its square is F, F turned over is F, and the tails of chi-square make one', () => {
    fc.assert(
      fc.property(real(0.501, 0.9995), real(1, 300), real(1, 300), (p, v, w) => {
        const t = tQuantile(p, v) ?? Number.NaN
        expect(apart(tQuantile(1 - p, v), -t)).toBeLessThan(1e-9)
        expect(apart(fQuantile(2 * p - 1, 1, v), t ** 2)).toBeLessThan(1e-7)
        expect(apart(1 / (fQuantile(p, v, w) ?? Number.NaN), fQuantile(1 - p, w, v))).toBeLessThan(1e-9)
        expect(apart((chiSquareCdf(v, w) ?? 0) + (chiSquareUpper(v, w) ?? 0), 1)).toBeLessThan(1e-13)
      }),
      runs,
    )
  })
})

describe('agreement', () => {
  test('intraclass correlations take no notice of unit, origin and the order of subjects and raters', () => {
    fc.assert(
      fc.property(table, real(0.1, 50), reading, (given, scale, shift) => {
        const first = where(intraclass(given))
        const other = where(
          intraclass(given.map((row) => row.map((x) => x * scale + shift).toReversed()).toReversed()),
        )
        for (const form of INTRACLASS_FORMS) {
          const { value, interval } = first.forms[form]
          expect(apart(other.forms[form].value, value)).toBeLessThan(1e-6)
          expect(Number.isNaN(value)).toBe(false)
          if (value === null) continue
          expect(value).toBeLessThanOrEqual(1)
          // The interval of agreement is an approximation, and can miss a negative estimate of few subjects.
          if (form.startsWith('2') && value < 0) continue
          const [low, high] = interval
          expect(low ?? value).toBeLessThanOrEqual(value + 1e-9)
          expect(high ?? value).toBeGreaterThanOrEqual(value - 1e-9)
        }
      }),
      runs,
    )
  })

  test('of raters that agree wholly all forms are 1; a fixed offset leaves consistency at 1', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(reading, { minLength: 2, maxLength: 8 }),
        real(0.5, 30),
        (values, offset) => {
          const same = where(intraclass(values.map((x) => [x, x, x])))
          for (const form of INTRACLASS_FORMS)
            expect(same.forms[form]).toMatchObject({ value: 1, interval: [1, 1] })
          const off = where(intraclass(values.map((x) => [x, x + offset])))
          expect(apart(off.forms['3,1'].value, 1)).toBeLessThan(1e-8)
          expect(off.forms['2,1'].value ?? 1).toBeLessThan(1)
        },
      ),
      runs,
    )
  })

  test('kappa takes no notice of who rated first', () => {
    fc.assert(
      fc.property(counts, (given) => {
        const turned = given.map((_, i) => given.map((row) => row[i] ?? 0))
        for (const kind of KAPPA_WEIGHTS) {
          const weights = weightsFor(kind, given.length)
          const [one, other] = [where(kappa(given, weights)), where(kappa(turned, weights))]
          expect(apart(one.value, other.value)).toBeLessThan(1e-8)
          expect(apart(one.standardError, other.standardError)).toBeLessThan(1e-6)
          expect(one.value).toBeLessThanOrEqual(1)
        }
      }),
      runs,
    )
  })

  test('weights make no difference to two categories', () => {
    const row = fc.tuple(fc.nat({ max: 40 }), fc.nat({ max: 40 }))
    fc.assert(
      fc.property(row, row, fc.constantFrom('linear', 'quadratic'), (first, second, kind) => {
        const plain = where(kappa([first, second], weightsFor('plain', 2)))
        const weighted = where(kappa([first, second], weightsFor(kind, 2)))
        expect(apart(plain.value, weighted.value)).toBeLessThan(1e-12)
      }),
      runs,
    )
  })

  test('limits turn over with the order of the two, and the exact interval holds its limit', () => {
    fc.assert(
      fc.property(series, ({ x, y }) => {
        const [one, other] = [where(blandAltman(x, y)), where(blandAltman(y, x))]
        expect(apart(one.bias, -other.bias)).toBeLessThan(1e-8)
        expect(apart(one.upper.value, -other.lower.value)).toBeLessThan(1e-8)
        expect(apart(one.upper.interval[0], -(other.lower.interval[1] ?? Number.NaN))).toBeLessThan(1e-8)
        expect(one.upper.interval[0] ?? 0).toBeLessThanOrEqual(one.upper.value + 1e-9)
        expect(one.upper.interval[1] ?? 0).toBeGreaterThanOrEqual(one.upper.value - 1e-9)
      }),
      { numRuns: 12 },
    )
  })
})

describe('lines', () => {
  test('scale and shift of either axis carry through slope and interval', () => {
    fc.assert(
      fc.property(series, real(0.1, 20), reading, ({ x, y }, scale, shift) => {
        const moved = y.map((value) => value * scale + shift)
        const [line, movedLine] = [where(leastSquares(x, y)), where(leastSquares(x, moved))]
        expect(apart(movedLine.slope, line.slope * scale)).toBeLessThan(1e-7)
        const [robust, movedRobust] = [where(theilSen(x, y)), where(theilSen(x, moved))]
        expect(apart(movedRobust.slope, robust.slope * scale)).toBeLessThan(1e-7)
        expect(
          apart(movedRobust.interval[0], robust.interval[0] === null ? null : robust.interval[0] * scale),
        ).toBeLessThan(1e-7)
        expect(where(mannKendall(x, moved)).s).toBe(where(mannKendall(x, y)).s)
      }),
      runs,
    )
  })

  test('a trend turns over with the values, and not with an order of the points', () => {
    fc.assert(
      fc.property(series, ({ x, y }) => {
        const [one, other] = [
          where(mannKendall(x, y)),
          where(
            mannKendall(
              x,
              y.map((value) => -value),
            ),
          ),
        ]
        expect(other.s).toBe(0 - one.s)
        expect(apart(other.p, one.p)).toBeLessThan(1e-8)
        expect(apart(where(mannKendall(x.toReversed(), y.toReversed())).p, one.p)).toBeLessThan(1e-8)
        expect(
          apart(where(theilSen(x.toReversed(), y.toReversed())).slope, where(theilSen(x, y)).slope),
        ).toBeLessThan(1e-8)
      }),
      runs,
    )
  })

  test('on a straight line both lines are that line', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 0, max: 300 }), { minLength: 3, maxLength: 9 }),
        reading,
        reading,
        (x, slope, level) => {
          const y = x.map((value) => level + slope * value)
          expect(apart(where(leastSquares(x, y)).slope, slope)).toBeLessThan(1e-8)
          expect(apart(where(theilSen(x, y)).slope, slope)).toBeLessThan(1e-8)
          expect(apart(where(theilSen(x, y)).intercept.joint, level)).toBeLessThan(1e-8)
        },
      ),
      runs,
    )
  })
})

describe('one person', () => {
  const reliability = real(0, 0.98)
  const sd = real(0.5, 30)

  test('change turns over with the two values, and every method is 0 where what is expected comes', () => {
    fc.assert(
      fc.property(reading, reading, sd, sd, reliability, (first, second, sd1, sd2, r) => {
        const one = where(plainChange({ first, second }, sd1, r))
        expect(
          apart(where(plainChange({ first: second, second: first }, sd1, r)).index, -one.index),
        ).toBeLessThan(1e-8)
        const retest = { mean1: first, sd1, mean2: second, sd2, r }
        for (const by of ['first', 'both', 'differences'] as const)
          expect(apart(where(practiceAdjustedChange({ first, second }, retest, by)).index, 0)).toBeLessThan(
            1e-8,
          )
        expect(apart(where(regressionChange({ first, second }, retest, null)).index, 0)).toBeLessThan(1e-8)
      }),
      runs,
    )
  })

  test('without practice and with equal spreads all three practice-adjusted errors are the plain one', () => {
    fc.assert(
      fc.property(reading, reading, sd, reliability, (first, second, spread, r) => {
        const retest = { mean1: 3, sd1: spread, mean2: 3, sd2: spread, r }
        const plain = where(plainChange({ first, second }, spread, r))
        for (const by of ['first', 'both', 'differences'] as const)
          expect(
            apart(where(practiceAdjustedChange({ first, second }, retest, by)).index, plain.index),
          ).toBeLessThan(1e-8)
      }),
      runs,
    )
  })

  test('a large group makes the small-sample regression the plain one', () => {
    fc.assert(
      fc.property(reading, reading, sd, reliability, (first, second, spread, r) => {
        const retest = { mean1: first, sd1: spread, mean2: 1, sd2: spread, r }
        const pair = { first, second }
        expect(
          apart(
            where(regressionChange(pair, retest, 1e9)).index,
            where(regressionChange(pair, retest, null)).index,
          ),
        ).toBeLessThan(1e-6)
      }),
      runs,
    )
  })

  test('the percentile of a case turns over with it, and lies within its interval', () => {
    fc.assert(
      fc.property(real(-4, 4), fc.integer({ min: 3, max: 100 }), (z, n) => {
        const one = where(singleCase(50 + 10 * z, { mean: 50, sd: 10, n }))
        const other = where(singleCase(50 - 10 * z, { mean: 50, sd: 10, n }))
        expect(apart(one.percentile + other.percentile, 100)).toBeLessThan(1e-8)
        expect(apart(one.p, other.p)).toBeLessThan(1e-8)
        const alike = where(
          differenceOfCase(10 * z, 0, { x: { mean: 0, sd: 6 }, y: { mean: 0, sd: 8 }, r: 0, n }),
        )
        expect(apart(alike.t, one.t)).toBeLessThan(1e-8)
      }),
      runs,
    )
  })

  test('SEM falls with reliability, and MDC95 is larger than MDC90', () => {
    fc.assert(
      fc.property(sd, reliability, (spread, r) => {
        const sem = where(standardErrorOfMeasurement(spread, r))
        expect(where(standardErrorOfMeasurement(spread, r + 0.01))).toBeLessThan(sem)
        expect(where(detectableChange(sem, 0.95))).toBeGreaterThan(where(detectableChange(sem, 0.9)))
      }),
      runs,
    )
  })
})

describe('samples', () => {
  test('Shapiro-Wilk takes no notice of unit, origin and direction; W and p lie within 0 and 1', () => {
    fc.assert(
      fc.property(
        fc.array(reading, { minLength: 3, maxLength: 40 }),
        real(0.1, 9),
        reading,
        (values, scale, shift) => {
          const one = where(shapiroWilk(values))
          const other = where(shapiroWilk(values.map((value) => shift - scale * value)))
          expect(apart(other.w, one.w)).toBeLessThan(1e-7)
          for (const value of [one.w, one.p]) {
            expect(value).toBeGreaterThanOrEqual(0)
            expect(value).toBeLessThanOrEqual(1)
          }
        },
      ),
      runs,
    )
  })

  test('tolerance factors grow with share and confidence, and shrink with the sample towards the normal quantile', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 60 }), real(0.6, 0.95), real(0.6, 0.95), (n, p, confidence) => {
        const k = where(twoSidedFactor(n, p, confidence))
        expect(where(twoSidedFactor(n, p + 0.02, confidence))).toBeGreaterThan(k)
        expect(where(twoSidedFactor(n, p, confidence + 0.02))).toBeGreaterThan(k)
        expect(where(twoSidedFactor(n + 5, p, confidence))).toBeLessThan(k)
        expect(where(oneSidedFactor(n, p, confidence))).toBeLessThan(k)
      }),
      { numRuns: 12 },
    )
  })
})
