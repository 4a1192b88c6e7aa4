import { describe, expect, test } from 'vitest'
import type { NormComparison } from '../../protocols/scoring/result.ts'
import { readBack, reportOf } from './reports.ts'

type Stratum = NormComparison['strata'][number]

/** A report in which every comparison says this of one stratum. */
function reportWith(statistic: NormComparison['statistic'], change: Partial<Stratum>): string {
  const input = reportOf('nine_hole_peg')
  const norm = input.result.scores.flatMap(({ norms }) => norms).find(({ strata }) => strata.length > 0)
  const [stratum] = norm?.strata ?? []
  if (norm === undefined || stratum === undefined) throw new Error('no comparison')
  const other: Stratum = {
    ...stratum,
    mean: null,
    sd: null,
    z: null,
    performanceZ: null,
    percentile: null,
    percentileInterval: null,
    ...change,
  }
  const norms: NormComparison[] = [{ ...norm, statistic, status: 'used', caution: [], strata: [other] }]
  const scores = input.result.scores.map((score) => (score.norms.length > 0 ? { ...score, norms } : score))
  return readBack({ ...input, result: { ...input.result, scores } }).text
}

describe('the written report says what tables of other kinds say', () => {
  test('between two tabulated percentiles, with the rule of reading them', () => {
    const text = reportWith('percentiles', {
      percentile: 62.5,
      definition: 'tabulated',
      chosenBy: { schooling: '9..' },
      figures: {
        statistic: 'percentiles',
        under: { rank: 25, value: 20 },
        over: { rank: 50, value: 30 },
        beyond: null,
      },
    })
    for (const words of [
      'between the 25th percentile of the table (20.0) and the 50th (30.0)',
      '63rd',
      'schooling 9..',
      'linear between two of them in the value',
    ])
      expect(text).toContain(words)
    expect(text).not.toContain('standard deviations from the mean')
  })

  test('beyond the outermost percentile, where nothing is made up', () => {
    const text = reportWith('percentiles', {
      definition: 'tabulated',
      figures: {
        statistic: 'percentiles',
        under: { rank: 95, value: 40 },
        over: null,
        beyond: { side: 'below', rank: 5 },
      },
    })
    expect(text).toContain('below the 5th, the outermost of the table')
  })

  test('L, M and S', () => {
    const text = reportWith('lms', {
      z: 1,
      performanceZ: -1,
      percentile: 15.9,
      definition: 'lms',
      figures: { statistic: 'lms', l: -0.5, m: 21.25, s: 0.12 },
    })
    for (const words of ['L −0.5000, M 21.2500, S 0.1200', 'z 1.00', '16th', 'worked out from L, M and S'])
      expect(text).toContain(words)
  })

  test('the side of a cut-off, and a band with its ends, in the words of the table', () => {
    const cut = { statistic: 'cut-offs', cut: 30, side: 'above', band: 'Slower than usual' } as const
    expect(reportWith('cut-offs', { definition: 'none', figures: cut })).toContain(
      'not below the cut-off of 30.0: Slower than usual',
    )
    const band = { statistic: 'bands', band: 'Moderate', from: 20, below: 40 } as const
    expect(reportWith('bands', { definition: 'none', figures: band })).toContain(
      'Moderate (from 20.0 to below 40.0)',
    )
  })
})
