import { describe, expect, test } from 'vitest'
import type { NormFigures } from '../../protocols/scoring/result.ts'
import { tellByTable, tellFigures } from '../../renderer/screens/result/tell-figures.ts'

const seconds = (value: number): string => `${value} s`
const told = (figures: NormFigures, percentile: number | null = null) => [
  tellFigures(figures, seconds),
  tellByTable(percentile, figures),
]

describe('what a table says, in words on the screen', () => {
  test('between two percentiles, at one, and beyond the outermost', () => {
    const [under, over] = [
      { rank: 25, value: 20 },
      { rank: 50, value: 30 },
    ]
    expect(told({ statistic: 'percentiles', under, over, beyond: null }, 62.4)).toEqual([
      'between the 25th percentile of the table (20 s) and the 50th (30 s), counted from the lowest value',
      expect.stringContaining('62nd percentile'),
    ])
    expect(told({ statistic: 'percentiles', under, over: under, beyond: null }, 75)[0]).toBe(
      'at the 25th percentile of the table (20 s), counted from the lowest value',
    )
    const beyond = { side: 'below', rank: 5 } as const
    expect(told({ statistic: 'percentiles', under: over, over: null, beyond })).toEqual([
      null,
      'Below the 5th percentile, the outermost of the table: nothing is made up beyond it.',
    ])
  })

  test('L, M and S are told; z and percentile stand elsewhere', () => {
    expect(told({ statistic: 'lms', l: -0.5, m: 21.25, s: 0.12 }, 16)).toEqual([
      'L −0.5000, M 21.2500, S 0.1200',
      null,
    ])
  })

  test('a cut-off by its side and a band by its ends, in the table’s own words', () => {
    expect(told({ statistic: 'cut-offs', cut: 30, side: 'above', band: 'Slow' })).toEqual([
      'not below the cut-off of 30 s',
      'The table says: Slow.',
    ])
    const ends = (from: number | null, below: number | null) =>
      told({ statistic: 'bands', band: 'Some', from, below })[0]
    expect([ends(20, 40), ends(null, 20), ends(40, null), ends(null, null)]).toEqual([
      'from 20 s to below 40 s',
      'below 20 s',
      'from 40 s on',
      'any value',
    ])
    expect(told({ statistic: 'bands', band: null, from: null, below: null })).toEqual([null, null])
  })
})
