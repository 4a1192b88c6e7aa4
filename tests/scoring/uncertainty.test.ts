import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { say as sayReport } from '../../main/reports/words.ts'
import { isHostWord, say as sayHost } from '../../main/hosts/words.ts'
import { say as sayScreen } from '../../renderer/words/index.ts'
import { buildResult, type ResultParts } from '../../protocols/scoring/build-result.ts'
import type { Result, ScoreValue } from '../../protocols/scoring/result.ts'
import { shownWith } from '../../protocols/scoring/rounding.ts'
import { UNCERTAINTY_NOTES, uncertaintyNotes } from '../../protocols/scoring/uncertainty/notes.ts'
import { propagate, seedFrom } from '../../protocols/scoring/uncertainty/propagate.ts'
import { carries, factsOf, givenOn, protocolOf, standingOf, trialOf } from './invented.ts'

const GIVEN = givenOn('2026-06-15')

const resultFor = (
  standing: Parameters<typeof standingOf>[0] = {},
  parts: Partial<ResultParts> = {},
): Result => {
  const stands = standingOf(standing)
  return buildResult({
    protocol: stands.protocol,
    administration: GIVEN,
    standing: stands,
    earlier: [],
    verified: new Map(),
    ...parts,
  })
}

function scoreOf({ scores }: Result, name: string, ...passes: string[]): ScoreValue {
  const found = scores.find(
    ({ score, place }) => score === name && passes.every((pass) => Object.values(place).includes(pass)),
  )
  if (found === undefined) throw new Error(`no score ${name}`)
  return found
}

/** Two presses of 0.07 s, each read by a wired key within 15 ms and a clock of 5 µs. */
const PRESS = Math.hypot(0.07, 0.015 / Math.sqrt(12), 0.000005 / Math.sqrt(12))
const ONE_TIME = 2 * Math.hypot(PRESS, PRESS)

describe('the uncertainty of a score of hand-taken times', () => {
  const result = resultFor()

  test.each([
    ['the least of three well apart is one time', 'fastest', ['right', 'near'], ONE_TIME],
    ['a sum of two', 'total', ['right'], ONE_TIME * Math.SQRT2],
    ['a mean of six', 'average', ['right'], ONE_TIME / Math.sqrt(6)],
    ['a median of six is the mean of its middle two', 'typical', ['right'], ONE_TIME / Math.SQRT2],
    ['a multiple', 'weighted', ['right', 'far'], 3 * ONE_TIME],
    ['a sum of rows picked by a condition', 'far_only', ['right'], ONE_TIME * Math.sqrt(3)],
    // total is 28 s on the right, 30 s on the left: JCGM 100:2008, 5.1.6.
    ['a ratio', 'side_ratio', [], (30 / 28) * ONE_TIME * Math.SQRT2 * Math.hypot(1 / 28, 1 / 30)],
    ['a number over a sum', 'speed', ['right'], (16 / 28 ** 2) * ONE_TIME * Math.SQRT2],
  ])('%s', (_what, name, passes, half) => {
    const { uncertainty } = scoreOf(result, name, ...passes)
    expect(uncertainty?.method).toBe('formula')
    expect((uncertainty?.half ?? 0) / half).toBeCloseTo(1, 4)
  })

  test('what an outcome counts as was not measured, and has no error of the reading', () => {
    const unable = { outcome: 'unable', readings: { time: 60 } } as const
    const none = resultFor({ trials: carries(() => unable) })
    expect(scoreOf(none, 'typical', 'right')).toMatchObject({ value: 60, uncertainty: null })
    const half = resultFor({ trials: carries((_hand, task) => (task === 'far' ? unable : {})) })
    const { uncertainty } = scoreOf(half, 'average', 'right')
    expect((uncertainty?.half ?? 0) / ((ONE_TIME * Math.sqrt(3)) / 6)).toBeCloseTo(1, 4)
  })

  test('times that lie close are simulated, always with the same outcome', () => {
    const close = carries((_hand, task, round) => ({
      readings: { time: (task === 'near' ? 10 : 20) + round / 100 },
    }))
    const [one, again] = [resultFor({ trials: close }), resultFor({ trials: close })]
    const { uncertainty } = scoreOf(one, 'fastest', 'right', 'near')
    expect(uncertainty?.method).toBe('simulation')
    expect(uncertainty?.half).toBeGreaterThan(0.8 * ONE_TIME)
    expect(uncertainty?.half).toBeLessThan(1.1 * ONE_TIME)
    expect(scoreOf(again, 'fastest', 'right', 'near').uncertainty).toEqual(uncertainty)
  })

  test('a spoken start and a seen stop make a time too long; a difference of two such times isn’t', () => {
    const { uncertainty } = scoreOf(result, 'fastest', 'right', 'near')
    expect(uncertainty).toMatchObject({ start: 'said', stop: 'seen', isLarge: false })
    expect(uncertainty?.bias).toBeCloseTo(0.11, 9)
    const arms = factsOf().arms
    const facts = factsOf({ arms: { ...arms, left: { ...arms.left, status: 'affected' } } })
    const worse = scoreOf(resultFor({ facts }), 'worse').uncertainty
    expect([worse?.bias, worse?.method]).toEqual([0, 'formula'])
    expect((worse?.half ?? 0) / (2 * ONE_TIME)).toBeCloseTo(1, 6)
  })

  test('the examiner’s own figures take the place of the published ones', () => {
    const own = { from: 'own', reaction: 0.2, spread: 0.03, source: 'drill' } as const
    const { scores, timing } = resultFor({}, { examinerTiming: own })
    const found = scores.find(({ score }) => score === 'fastest')?.uncertainty
    expect(found?.bias).toBeCloseTo(0.2, 9)
    expect(found?.half).toBeLessThan(ONE_TIME / 2)
    expect(timing?.examiner).toEqual(own)
  })

  test('a clock in coarse steps and a time typed from a watch are less certain', () => {
    const coarse = resultFor(
      {},
      { administration: { ...GIVEN, clock: { resolutionMs: 100, isolated: false } } },
    )
    expect(scoreOf(coarse, 'fastest', 'right', 'near').uncertainty?.half).toBeGreaterThan(1.05 * ONE_TIME)
    const typed = carries().map((trial) => {
      const { time } = trial.readings
      return time === undefined ? trial : { ...trial, readings: { time: { ...time, typed: true } } }
    })
    // Whole seconds were typed: the watch was read to a second, as far as anybody knows.
    const times = Object.values(resultFor({ trials: typed }).timing?.times ?? {})
    expect(times[0]?.time).toBeCloseTo(2 * Math.hypot(0.07, 0.07, 1 / Math.sqrt(12)), 6)
  })

  test('a bound, a missing value and a count have none', () => {
    const limited = carries((_hand, task, round) =>
      task === 'near' && round === 1 ? { outcome: 'limit', readings: { time: null } } : {},
    )
    const found = resultFor({ trials: limited })
    expect(scoreOf(found, 'average', 'right')).toMatchObject({ over: true, uncertainty: null })
    expect(scoreOf(found, 'turns', 'right').uncertainty).toBeNull()
    const refused = carries((_hand, task) => (task === 'near' ? { outcome: 'refused', readings: {} } : {}))
    expect(scoreOf(resultFor({ trials: refused }), 'total', 'right')).toMatchObject({
      value: null,
      uncertainty: null,
    })
  })

  test('a grade goes in steps and has none; a number of things a second has', () => {
    const scores = `
scores:
  - { score: grade, title: Grade, each: hand, value: "mean(carry.time) < 15 ? 3 : 2", unit: "{score}", better: higher, decimals: 0 }
  - { score: pace, title: Pace, each: hand, value: "quantity(90, '{peg}') / sum(carry.time)", unit: "{peg}/s", better: higher, decimals: 2 }
`
    const found = resultFor({ protocol: protocolOf({ scores }) })
    expect(scoreOf(found, 'grade', 'right')).toMatchObject({ value: 2, uncertainty: null })
    // Six times with a sum of 90 s on the right.
    expect(
      (scoreOf(found, 'pace', 'right').uncertainty?.half ?? 0) / ((ONE_TIME * Math.sqrt(6)) / 90),
    ).toBeCloseTo(1, 3)
  })

  test('a time under four seconds says that its error is more than a twentieth of it', () => {
    const short = carries((_hand, _task, round) => ({ readings: { time: 1 + round } }))
    const found = resultFor({ trials: short })
    expect(scoreOf(found, 'fastest', 'right', 'near').uncertainty?.isLarge).toBe(true)
    const notes = uncertaintyNotes(found.scores, found.timing)
    expect(notes.find(({ code }) => code === 'short')?.detail.scores).toContain('Fastest')
  })

  test('beside the other hand difference and ratio have theirs, and single times have a least distance', () => {
    const { otherHand } = scoreOf(result, 'total', 'right')
    expect((otherHand?.uncertainty?.difference ?? 0) / (2 * ONE_TIME)).toBeCloseTo(1, 6)
    expect(otherHand?.uncertainty?.ratio).toBeGreaterThan(0)
    expect((result.timing?.pair ?? 0) / (Math.SQRT2 * ONE_TIME)).toBeCloseTo(1, 6)
    expect(Object.keys(result.timing?.times ?? {})).toHaveLength(12)
  })

  test('a test without times says nothing of them', () => {
    const protocol = protocolOf({
      steps: 'steps:\n  - { counted: blocks, window: 60 s, start: { said: go }, range: [0, 200] }\n',
      scores:
        'scores:\n  - { score: all, title: All, value: sum(blocks.count), unit: "{count}", better: higher, decimals: 0 }\n',
    })
    const trials = [trialOf({ step: 'blocks', place: {}, readings: { count: 30 }, unit: '{count}' })]
    const found = resultFor({ protocol, trials, orders: [], conditions: {} })
    expect([found.timing, scoreOf(found, 'all').uncertainty]).toEqual([null, null])
    expect(uncertaintyNotes(found.scores, found.timing)).toEqual([])
  })
})

const inputsOf = (us: readonly number[]) =>
  us.map((each, at) => ({ u: each, reading: String(at), moves: 1 as const }))
const largest = (errors: readonly number[]): number => Math.max(...errors)
/** Without a value as soon as its input is off by more than a hundredth. */
const onEdge = ([error = 0]: readonly number[]): number | null => (error > 0.01 ? null : 5 + error)

describe('laws of propagation', () => {
  const u = fc.double({ min: 0.001, max: 0.5, noNaN: true })
  const factor = fc.double({ min: -5, max: 5, noNaN: true })

  test('of a straight model it is twice the root of the squares of what each input does', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(u, factor), { minLength: 1, maxLength: 8 }), (parts) => {
        const model = (errors: readonly number[]) =>
          40 + parts.reduce((sum, [, by], at) => sum + by * (errors[at] ?? 0), 0)
        const found = propagate(model, 40, inputsOf(parts.map(([each]) => each)), 1)
        const half = 2 * Math.hypot(...parts.map(([each, by]) => each * by))
        expect(Math.abs((found?.half ?? Number.NaN) - half)).toBeLessThan(1e-9)
      }),
    )
  })

  test('a mean of n is as uncertain as one over the root of n, and a value far from all others is one alone', () => {
    fc.assert(
      fc.property(u, fc.integer({ min: 1, max: 9 }), (each, n) => {
        const us = Array.from({ length: n }, () => each)
        const mean = propagate((errors) => errors.reduce((sum, e) => sum + e, 0) / n, 0, inputsOf(us), 1)
        expect(mean?.half).toBeCloseTo((2 * each) / Math.sqrt(n), 9)
        const least = propagate(
          (errors) => Math.min(...errors.map((e, at) => e + 10 * at)),
          0,
          inputsOf(us),
          1,
        )
        expect([least?.method, (least?.half ?? 0).toFixed(9)]).toEqual(['formula', (2 * each).toFixed(9)])
      }),
    )
  })

  test('a seed gives the same simulation again, and another one nearly the same', () => {
    fc.assert(
      fc.property(u, fc.integer(), fc.integer(), (each, seed, other) => {
        const run = (by: number) => propagate(largest, 0, inputsOf([each, each, each]), by)
        expect(run(seed)).toEqual(run(seed))
        expect(run(seed)?.method).toBe('simulation')
        expect((run(seed)?.half ?? 0) / (run(other)?.half ?? 1)).toBeCloseTo(1, 0)
      }),
      { numRuns: 10 },
    )
  })

  test('a value that is lost too often nearby has none', () => {
    expect(propagate(onEdge, 5, inputsOf([0.1]), seedFrom('x'))).toBeNull()
  })
})

describe('shown together, to one place', () => {
  test.each([
    [18.4217, 0.19837, 2, '18.42', '0.20'],
    [18.4217, 0.19837, 1, '18.4', '0.2'],
    [18.4217, 0.19837, 4, '18.42', '0.20'],
    [18.4217, 0.21, 1, '18.4', '0.3'],
    [18.4217, 0.19837, 0, '18', '0.2'],
    [0.9216, 0.00397, 2, '0.92', '0.004'],
    [160.05, 12.3, 1, '160', '13'],
    [-3.14, 0.2805, 2, '-3.14', '0.28'],
    [100, 10.47, 0, '100', '11'],
  ])('%d with %d at %d places: %s ± %s', (value, half, decimals, shown, error) => {
    expect(shownWith(value, half, decimals)).toEqual({ value: shown, half: error })
  })

  test('the error is never shown smaller than it is by more than a hundredth, nor with more than two digits after its first zeros', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.0005, max: 90, noNaN: true }), fc.nat({ max: 4 }), (half, decimals) => {
        const shown = shownWith(1, half, decimals)
        expect(Number(shown.half)).toBeGreaterThanOrEqual(0.99 * half)
        expect(Number(shown.half)).toBeLessThan(2.01 * half + (half >= 1 ? 1 : 0))
        expect(shown.half.replace(/^0\.?0*/, '').replace('.', '').length).toBeLessThanOrEqual(3)
      }),
    )
  })
})

describe('every note has words on the screen, in the report and on the command line', () => {
  test.each(Object.entries(UNCERTAINTY_NOTES))('%s', (code, details) => {
    const detail = Object.fromEntries(details.map((name) => [name, 'x']))
    const key = `uncertainty.${code}` as 'uncertainty.error'
    expect(isHostWord(key)).toBe(true)
    for (const told of [sayHost(key, detail), sayReport(key, detail), sayScreen(`result.${key}`, detail)])
      expect(told).toMatch(/^[^{}]{30,}\.$/)
  })
})
