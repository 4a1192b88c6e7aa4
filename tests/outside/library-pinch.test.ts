/** Pinch strength against what is published of it beyond its table. */
import { describe, expect, test } from 'vitest'
import { readProtocol } from '../../protocols/language/read.ts'
import { compareValue } from '../../protocols/scoring/compare.ts'
import { folderOf, rowsOf } from '../library/folders.ts'

const PATTERNS = ['tip', 'key', 'palmar'] as const

const strata = (pattern: string, sex: string, hand: string) =>
  rowsOf('pinch_strength', 'norms/mathiowetz1985.csv').filter(
    (row) => row.pattern === pattern && row.sex === sex && row.hand === hand,
  )

/** Mean of all people in some rows of a table. */
function pooled(rows: readonly Readonly<Record<string, string>>[]): number {
  const people = rows.reduce((sum, row) => sum + Number(row.n), 0)
  return rows.reduce((sum, row) => sum + Number(row.n) * Number(row.mean), 0) / people
}

// Seen, abstract of the 1985 study: average pinch is relatively stable from 20 to 59 years and declines from 60 to 79.
describe.each(PATTERNS)('1985, %s pinch', (pattern) => {
  test.each(['M right', 'M left', 'F right', 'F left'])(
    '%s: stable to 59 years, weaker from 60 on',
    (group) => {
      const [sex = '', hand = ''] = group.split(' ')
      const rows = strata(pattern, sex, hand)
      const young = rows.filter(({ age_max }) => age_max !== '' && Number(age_max) <= 59)
      const old = rows.filter(({ age_min }) => Number(age_min) >= 60)
      expect([young.length, old.length]).toEqual([8, 4])
      const middle = pooled(young)
      for (const { mean } of young) expect(Math.abs(Number(mean) / middle - 1)).toBeLessThan(0.16)
      expect(pooled(old)).toBeLessThan(middle)
    },
  )
})

// Memory: pooled means of the 1985 study, in pounds-force.
test.each([
  ['tip', 'M', 'right', 17.0],
  ['key', 'M', 'right', 24.5],
  ['key', 'M', 'left', 23.6],
  ['key', 'F', 'right', 16.2],
  ['key', 'F', 'left', 15.3],
])('1985, %s pinch, %s, %s hand: %f lbf in all', (pattern, sex, hand, mean) => {
  expect(Math.abs(pooled(strata(pattern, sex, hand)) - mean)).toBeLessThan(0.1)
})

// Seen, abstract of Crosby and Wehbe 1994 (214 volunteers): key pinch about 22 and pulp pinch about 16 per cent of grip.
test.each([
  ['key', 0.22],
  ['tip', 0.16],
])('%s pinch is about that share of grip in the tables of 1985', (pattern, share) => {
  const grip = rowsOf('grip_strength', 'norms/mathiowetz1985.csv').filter(({ hand }) => hand === 'right')
  const pinch = [...strata(pattern, 'M', 'right'), ...strata(pattern, 'F', 'right')]
  expect(Math.abs(pooled(pinch) / pooled(grip) - share)).toBeLessThan(0.04)
})

// Memory: 1985, men of 20 to 24, tip, right: 18.0 lbf (3.0), n 29; 1 lbf is 0.45359237 kgf exactly.
test('a man of 22 with a tip pinch of 21 lbf lies one SD above the mean, at the 84th percentile', () => {
  const { protocol } = readProtocol(folderOf('pinch_strength'))
  if (!protocol) throw new Error('can’t be read')
  const found = compareValue({
    protocol,
    score: 'mean_of_3',
    value: 21 * 0.45359237,
    age: { from: 22, to: 22 },
    sex: 'M',
    hand: 'right',
    dominant: 'left',
    affected: null,
    told: { pattern: 'tip' },
  })
  if ('problem' in found) throw new Error(found.problem)
  const [norm] = found.norms
  expect(norm).toMatchObject({ status: 'used', standing: 'memory' })
  expect(norm?.strata).toMatchObject([{ hand: 'right', n: 29, ageMin: 20, ageMax: 24 }])
  expect(norm?.strata[0]?.z).toBeCloseTo(1, 9)
  // Student's t with 28 degrees of freedom, scaled for a new person: 83.3 %; the normal curve has 84.1 %.
  expect(norm?.strata[0]?.percentile).toBeGreaterThan(82.5)
  expect(norm?.strata[0]?.percentile).toBeLessThan(84.2)
})
