import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { shortText } from '../../main/reports/index.ts'
import type { Result, ScoreValue } from '../../protocols/scoring/result.ts'
import { facts } from '../runner/giving.ts'
import { reportOf } from './reports.ts'

const resultOf = (id: string): Result => reportOf(id).result

const withScores = (result: Result, change: (score: ScoreValue) => Partial<ScoreValue>): Result => ({
  ...result,
  scores: result.scores.map((score) => ({ ...score, ...change(score) })),
})

const deviation = (what: string) => ({
  code: 'told' as const,
  what,
  reason: 'No other room',
  norms: 'kept' as const,
  at: '2026-03-02T10:00:00.000+01:00',
  by: 'Ada',
})

test('says test, version, day with offset, examiner, values with unit and hand, and that nothing went otherwise', () => {
  const result = withScores(resultOf('nine_hole_peg'), ({ score, place }) =>
    score === 'time' ? { value: place['hand'] === 'right' ? 21.349 : 24, over: false } : {},
  )
  expect(shortText(result).split('\n')).toEqual([
    `Nine-hole peg test (protocol ${result.protocol.version}), 2 March 2026, UTC+01:00. Examiner: Ada Brook.`,
    'Time of the first run: right hand 21.3 s, left hand 24.0 s.',
    'Given as the protocol says.',
  ])
})

test('says a bound as a bound, and a missing value with its reason, never as zero', () => {
  const result = withScores(resultOf('nine_hole_peg'), ({ score, place }) => {
    if (score !== 'time') return {}
    return place['hand'] === 'right'
      ? { value: 300, over: true }
      : { value: null, missing: { code: 'unable', detail: { step: 'run', column: 'time' } } }
  })
  expect(shortText(result)).toContain('right hand ≥ 300.0 s, left hand no value (tried, unable)')
})

const reason = (code: string) => ({ value: null, missing: { code, detail: { step: 'run', column: 'time' } } })

test('leaves out what could not be worked out anyhow, and keeps why a hand has no value', () => {
  const result = resultOf('nine_hole_peg')
  expect(shortText(result)).not.toContain('Fastest run')
  const nothing = withScores(result, () => reason('refused'))
  expect(shortText(nothing)).toContain('No value for Time of the first run, Fastest run, ')
  expect(shortText(nothing)).toContain(': refused.')
  expect(shortText(withScores(result, () => reason('needs_not_met')))).toContain(
    'what the protocol asks for first was not given',
  )
})

test('names each deviation, and that the test was not finished', () => {
  const result = {
    ...resultOf('nine_hole_peg'),
    deviations: [deviation('Table too high.'), deviation('Noise.')],
  }
  expect(shortText({ ...result, complete: false })).toContain(
    '2 deviations: Table too high; Noise. The test was not given to its end.',
  )
})

test('marks a rehearsal in its first line', () => {
  expect(shortText({ ...resultOf('grip_strength'), rehearsal: true })).toMatch(
    /^Rehearsal, no result of a client\./,
  )
})

test('tells nothing that is compared: no norm, percentile, z or change stands in it', () => {
  for (const id of ['nine_hole_peg', 'box_and_block', 'grip_strength']) {
    const verified = new Map([
      ['adults_1985', 'Bo'],
      ['adults_2003', 'Bo'],
    ])
    const plain = shortText(reportOf(id, { facts: facts({ sex: 'F' }) }).result)
    expect(plain).not.toMatch(/percentile|norm|\bz\b|MDC|mean of \d|SD/i)
    expect(shortText(reportOf(id, { facts: facts({ sex: 'F' }), verified }).result)).toBe(plain)
  }
})

test('is at most six lines, whatever the scores and deviations, and leaves none of them out', () => {
  const base = resultOf('grip_strength')
  const [sample] = base.scores
  if (!sample) throw new Error('no score')
  const text = fc.stringMatching(/^[a-z]{1,8}(\n[a-z]{1,8})?$/)
  fc.assert(
    fc.property(
      fc.uniqueArray(text, { maxLength: 30 }),
      fc.array(text, { maxLength: 12 }),
      fc.boolean(),
      fc.boolean(),
      (titles, departures, rehearsal, complete) => {
        const scores = titles.map((title) => ({ ...sample, score: title, title, value: 7, shown: true }))
        const told = shortText({
          ...base,
          rehearsal,
          complete,
          scores,
          deviations: departures.map(deviation),
        })
        const lines = told.split('\n')
        expect(lines.length).toBeLessThanOrEqual(6)
        expect(lines.every((line) => line.trim() === line && line !== '')).toBe(true)
        for (const one of [...titles, ...departures]) expect(told).toContain(one.replace('\n', ' '))
      },
    ),
  )
})
