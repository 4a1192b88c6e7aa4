/**
 * Tables of percentiles hold what was collected: how many rows, the sums of their columns, worked out from the collected
 * figures and not from the files under test, and rows picked out. Those of range of motion are in `motion-tables.test.ts`.
 */
import { describe, expect, test } from 'vitest'
import { fileOf, folderOf, rowsOf, TESTS } from './folders.ts'

interface Collected {
  readonly rows: number
  readonly sums: Readonly<Record<string, number>>
  readonly spots: readonly string[]
}

const COLLECTED: Readonly<Record<string, Collected>> = {
  nhanes2013_mean_percentiles: {
    rows: 80,
    sums: { n: 13_892, p5: 1692.3, p10: 1850.6, p50: 2414.1, p90: 3018.4 },
    spots: ['M,6,7,right,206,7.4,8.0,9.1,11.2,12.7,14.2,15.5,seen'],
  },
  nhanes2013_mean_percentiles_by_dominance: {
    rows: 80,
    sums: { n: 13_482, p5: 1695.6, p10: 1854.6, p50: 2412.1, p90: 3016.7 },
    spots: ['M,6,7,dominant,199,6.9,8.0,9.1,11.1,12.7,14.1,15.5,seen'],
  },
  nhanes2013_highest_percentiles: {
    rows: 80,
    sums: { n: 13_892, p5: 1788.4, p10: 1948.9, p50: 2531.6, p90: 3169.6 },
    spots: ['F,80,,left,115,9.2,11.8,15.8,19.1,22.8,25.7,27.0,seen'],
  },
  nhanes2013_highest_percentiles_by_dominance: {
    rows: 80,
    sums: { n: 13_482, p5: 1790.8, p10: 1955.6, p50: 2532, p90: 3165.1 },
    spots: ['F,80,,nondominant,112,9.1,11.9,15.8,19.0,22.8,25.9,27.0,seen'],
  },
  nhanes2013_either_percentiles: {
    rows: 40,
    sums: { n: 6946, p5: 949.8, p10: 1033.1, p50: 1320.1, p90: 1639.4 },
    spots: ['M,6,7,any,206,8.4,9.0,10.3,12.1,13.8,15.3,16.9,seen'],
  },
  dodds2014: {
    rows: 25,
    sums: { n: 0, p10: 650, p50: 893, p90: 1132 },
    spots: ['M,23,27,any,,36,41,48,55,61,memory', 'F,78,82,any,,13,16,19,23,26,memory'],
  },
}

const tables = TESTS.filter((name) => name !== 'range_of_motion').flatMap((name) =>
  [...folderOf(name).files.keys()].filter(
    (path) => path.endsWith('.csv') && 'p50' in (rowsOf(name, path)[0] ?? {}),
  ),
)

test('every table of percentiles is compared', () => {
  expect(
    Object.keys(COLLECTED)
      .map((name) => `norms/${name}.csv`)
      .sort(),
  ).toEqual(tables.sort())
})

describe.each(Object.entries(COLLECTED))('%s', (name, { rows, sums, spots }) => {
  const path = `norms/${name}.csv`
  const own = rowsOf('grip_strength', path)

  test('as many rows, and the same sums', () => {
    expect(own).toHaveLength(rows)
    for (const [column, sum] of Object.entries(sums)) {
      const found = own.reduce((all, row) => all + Math.round(Number(row[column] || 0) * 10), 0) / 10
      expect([column, found]).toEqual([column, sum])
    }
  })

  test('rows picked out stand as collected, to the last digit', () => {
    const lines = fileOf('grip_strength', path).split('\n')
    for (const spot of spots) expect(lines).toContain(spot)
  })
})
