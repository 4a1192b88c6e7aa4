/**
 * The remembered strata of the tables, put together again by their sizes, give the pooled figures that the
 * sources quote for all men and all women. This supports the memory; it doesn't replace a look into print.
 */
import { describe, expect, test } from 'vitest'
import { rowsOf } from '../library/folders.ts'

interface Stratum {
  readonly n: number
  readonly mean: number
  readonly sd: number | null
}

function strata(name: string, table: string, sex: string, hand: string): readonly Stratum[] {
  return rowsOf(name, `norms/${table}.csv`)
    .filter((row) => row.sex === sex && row.hand === hand)
    .map((row) => ({ n: Number(row.n), mean: Number(row.mean), sd: row.sd ? Number(row.sd) : null }))
}

/** Mean of all people in the strata. */
function pooledMean(of: readonly Stratum[]): number {
  const people = of.reduce((sum, { n }) => sum + n, 0)
  return of.reduce((sum, { n, mean }) => sum + n * mean, 0) / people
}

/** SD of all people in the strata, within and between them. */
function pooledSd(of: readonly Stratum[]): number {
  const people = of.reduce((sum, { n }) => sum + n, 0)
  const grand = pooledMean(of)
  const squares = of.reduce(
    (sum, { n, mean, sd }) => sum + (n - 1) * (sd ?? NaN) ** 2 + n * (mean - grand) ** 2,
    0,
  )
  return Math.sqrt(squares / (people - 1))
}

describe('nine-hole peg, adults 1985', () => {
  // Seen: means and SDs of all men, quoted on a general question-and-answer page.
  test.each([
    ['right', 19.0, 3.2],
    ['left', 20.6, 3.9],
  ])('men, %s hand: %f s, SD %f', (hand, mean, sd) => {
    const men = strata('nine_hole_peg', 'mathiowetz1985', 'M', hand)
    expect(Math.abs(pooledMean(men) - mean)).toBeLessThan(0.1)
    expect(Math.abs(pooledSd(men) - sd)).toBeLessThan(0.1)
  })

  // Memory: pooled means of all women. Two of their SDs are blank, so no pooled SD.
  test.each([
    ['right', 17.8],
    ['left', 19.6],
  ])('women, %s hand: %f s', (hand, mean) => {
    expect(Math.abs(pooledMean(strata('nine_hole_peg', 'mathiowetz1985', 'F', hand)) - mean)).toBeLessThan(
      0.1,
    )
  })
})

// Memory: pooled means of all women of the 2003 study.
test.each([
  ['right', 17.67],
  ['left', 18.91],
])('nine-hole peg 2003, women, %s hand: %f s', (hand, mean) => {
  expect(Math.abs(pooledMean(strata('nine_hole_peg', 'oxfordgrice2003', 'F', hand)) - mean)).toBeLessThan(
    0.015,
  )
})

// Memory: pooled means of the 1985 study. Seen, on its first page: 310 men and 318 women.
test.each([
  ['M', 310, 'right', 76.9],
  ['M', 310, 'left', 75.4],
  ['F', 318, 'right', 78.4],
  ['F', 318, 'left', 75.8],
])('box and block 1985, %s (%i people), %s hand: %f blocks', (sex, people, hand, mean) => {
  const of = strata('box_and_block', 'mathiowetz1985', sex, hand)
  expect(of.reduce((sum, { n }) => sum + n, 0)).toBe(people)
  expect(Math.abs(pooledMean(of) - mean)).toBeLessThan(0.1)
})

// Seen, in the abstract: directions of the 1985 peg study.
test('nine-hole peg 1985: women are faster than men, the old slower than the young', () => {
  for (const hand of ['right', 'left']) {
    const men = strata('nine_hole_peg', 'mathiowetz1985', 'M', hand)
    const women = strata('nine_hole_peg', 'mathiowetz1985', 'F', hand)
    expect(pooledMean(women)).toBeLessThan(pooledMean(men))
    for (const of of [men, women]) expect(of.at(-1)?.mean).toBeGreaterThan(of[0]?.mean ?? Infinity)
  }
})
