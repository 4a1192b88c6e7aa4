/**
 * The norm tables hold what their sources gave, row by row. The sums below were worked out from the collected
 * figures before they were carried over, not from the files under test: sum of `age_min` times two plus
 * `age_max`, of `n`, of the means and of the SDs (blank as 0), for each sex and hand. A cell that changes, a row
 * that is lost or moved to the other hand, moves one of them. A table with columns of its own, such as a kind of pinch
 * or a subtest, has a group for each of them.
 */
import { describe, expect, test } from 'vitest'
import { fileOf, folderOf, rowsOf, TESTS } from './folders.ts'

type Sums = readonly [group: string, rows: number, ages: number, n: number, means: number, sds: number]

const COLLECTED: Readonly<Record<string, readonly Sums[]>> = {
  'nine_hole_peg norms/mathiowetz1985.csv': [
    ['M right', 12, 1679, 310, 229.2, 30.1],
    ['M left', 12, 1679, 310, 247.7, 34.6],
    ['F right', 12, 1679, 318, 213.8, 24.4],
    ['F left', 12, 1679, 318, 234.6, 27.2],
  ],
  'nine_hole_peg norms/oxfordgrice2003.csv': [
    ['M right', 11, 1487, 0, 213.15, 33.02],
    ['M left', 11, 1487, 0, 221.84, 32.02],
    ['F right', 11, 1487, 389, 195.89, 27.15],
    ['F left', 11, 1487, 389, 209.69, 29.83],
  ],
  'nine_hole_peg norms/ziari2018_children.csv': [
    ['any right', 3, 84, 0, 62.54, 6.25],
    ['any left', 3, 84, 0, 70.95, 7.18],
  ],
  'box_and_block norms/mathiowetz1985.csv': [
    ['M right', 12, 1679, 310, 920.1, 105.9],
    ['M left', 12, 1679, 310, 901.7, 103.8],
    ['F right', 12, 1679, 318, 941.3, 91.7],
    ['F left', 12, 1679, 318, 910.7, 88.6],
  ],
  'box_and_block norms/ziari2018_children.csv': [
    ['any right', 3, 84, 0, 192.34, 14.85],
    ['any left', 3, 84, 0, 189.02, 15.21],
  ],
  'jebsen_taylor norms/jebsen1969.csv': [
    ['writing M nondominant', 2, 313, 150, 80.5, 30.9],
    ['card_turning M nondominant', 2, 313, 150, 10.6, 3.1],
    ['small_objects M nondominant', 2, 313, 150, 14.1, 2.8],
    ['simulated_feeding M nondominant', 2, 313, 150, 16.5, 2.8],
    ['checkers M nondominant', 2, 313, 150, 8.4, 1.6],
    ['large_light M nondominant', 2, 313, 150, 7.1, 1.3],
    ['large_heavy M nondominant', 2, 313, 150, 6.9, 1.1],
    ['writing M dominant', 2, 313, 150, 31.7, 11],
    ['card_turning M dominant', 2, 313, 150, 9.3, 2.5],
    ['small_objects M dominant', 2, 313, 150, 12.7, 2.2],
    ['simulated_feeding M dominant', 2, 313, 150, 13.3, 1.8],
    ['checkers M dominant', 2, 313, 150, 7.1, 1.4],
    ['large_light M dominant', 2, 313, 150, 6.6, 1.1],
    ['large_heavy M dominant', 2, 313, 150, 6.5, 1.2],
    ['writing F nondominant', 2, 313, 150, 69.1, 23.5],
    ['card_turning F nondominant', 2, 313, 150, 10.3, 2.2],
    ['small_objects F nondominant', 2, 313, 150, 12.6, 1.8],
    ['simulated_feeding F nondominant', 2, 313, 150, 16.7, 3.6],
    ['checkers F nondominant', 2, 313, 150, 8.2, 1.7],
    ['large_light F nondominant', 2, 313, 150, 6.7, 1.2],
    ['large_heavy F nondominant', 2, 313, 150, 7, 1.2],
    ['writing F dominant', 1, 99, 120, 11.7, 2.1],
    ['card_turning F dominant', 2, 313, 150, 9.2, 2.6],
    ['small_objects F dominant', 2, 313, 150, 12.1, 2.1],
    ['simulated_feeding F dominant', 2, 313, 150, 13.5, 2.2],
    ['checkers F dominant', 2, 313, 150, 6.9, 0.6],
    ['large_light F dominant', 2, 313, 150, 6.6, 1.1],
    ['large_heavy F dominant', 2, 313, 150, 6.7, 1.1],
  ],
  'pinch_strength norms/mathiowetz1985.csv': [
    ['tip M right', 12, 1679, 310, 203.9, 46.1],
    ['tip M left', 12, 1679, 310, 195.8, 44.2],
    ['tip F right', 12, 1679, 318, 136.5, 28.5],
    ['tip F left', 12, 1679, 318, 129.9, 27.3],
    ['key M right', 12, 1679, 310, 293.9, 47.8],
    ['key M left', 12, 1679, 310, 283.1, 47.8],
    ['key F right', 12, 1679, 318, 194.9, 30.9],
    ['key F left', 12, 1679, 318, 183.4, 32.3],
    ['palmar M right', 12, 1679, 310, 279.5, 50.1],
    ['palmar M left', 12, 1679, 310, 275.4, 54.5],
    ['palmar F right', 12, 1679, 318, 195.3, 38.4],
    ['palmar F left', 12, 1679, 318, 188.1, 36.8],
  ],
  'grip_strength norms/mathiowetz1985.csv': [
    ['M right', 12, 1679, 310, 1246.5, 262],
    ['M left', 12, 1679, 310, 1110.4, 238.5],
    ['F right', 12, 1679, 318, 750.3, 153.6],
    ['F left', 12, 1679, 318, 647.5, 141.2],
  ],
  'grip_strength norms/mathiowetz1986_children.csv': [
    ['M right', 7, 259, 0, 466.3, 96.8],
    ['M left', 7, 259, 0, 409.4, 104.2],
    ['F right', 7, 259, 0, 367.4, 72.5],
    ['F left', 7, 259, 0, 324.1, 68.4],
  ],
  'grip_strength norms/massywestropp2011.csv': [
    ['M dominant', 6, 785, 0, 259, 53.2],
    ['M nondominant', 6, 785, 0, 250, 52.6],
    ['F dominant', 6, 785, 0, 162, 36.5],
    ['F nondominant', 6, 785, 0, 153, 34],
  ],
  'grip_strength norms/nhanes2013_mean.csv': [
    ['M right', 20, 2177, 3436, 743.2, 140],
    ['M left', 20, 2177, 3436, 710.7, 138.1],
    ['F right', 20, 2177, 3510, 499.1, 95.1],
    ['F left', 20, 2177, 3510, 470.1, 89.9],
  ],
  'grip_strength norms/nhanes2013_highest.csv': [
    ['M right', 20, 2177, 3436, 780.1, 146.3],
    ['M left', 20, 2177, 3436, 746.6, 143.6],
    ['F right', 20, 2177, 3510, 525.6, 98.8],
    ['F left', 20, 2177, 3510, 494.5, 93.1],
  ],
  'grip_strength norms/nhanes2013_either.csv': [
    ['M any', 20, 2177, 3436, 795.4, 144],
    ['F any', 20, 2177, 3510, 534.3, 96.3],
  ],
  'grip_strength norms/steiber2016.csv': [
    ['F any', 14, 2061, 13120, 423.4, 77],
    ['M any', 14, 2061, 12165, 667.7, 117.4],
  ],
  'grip_strength norms/nhanes2013_mean_by_dominance.csv': [
    ['M dominant', 20, 2177, 3304, 743.4, 140.2],
    ['M nondominant', 20, 2177, 3304, 709.3, 137.4],
    ['F dominant', 20, 2177, 3437, 499.8, 94.9],
    ['F nondominant', 20, 2177, 3437, 469.3, 89.8],
  ],
  'grip_strength norms/nhanes2013_highest_by_dominance.csv': [
    ['M dominant', 20, 2177, 3304, 780.8, 146.3],
    ['M nondominant', 20, 2177, 3304, 745, 142.5],
    ['F dominant', 20, 2177, 3437, 526.1, 98.5],
    ['F nondominant', 20, 2177, 3437, 494, 92.6],
  ],
  'box_and_block norms/torres2014_children.csv': [
    ['any right', 1, 23, 386, 60.9, 0],
    ['any left', 1, 23, 386, 57.8, 0],
  ],
  'box_and_block norms/ljubljana_children.csv': [
    ['F right', 1, 19, 15, 38.9, 0],
    ['F left', 1, 19, 15, 37.6, 0],
    ['M right', 1, 19, 15, 43, 0],
    ['M left', 1, 19, 15, 42.4, 0],
  ],
  'stereognosis norms/malika2023.csv': [
    ['any right', 1, 76, 0, 3.04, 0],
    ['any left', 1, 76, 0, 2.09, 0],
  ],
}

/** Rows as collected, one or more a table, whole: `sex,age_min,age_max,hand,n,mean,sd,provenance`. */
const SPOTS: Readonly<Record<string, readonly string[]>> = {
  'nine_hole_peg norms/mathiowetz1985.csv': [
    'M,20,24,right,29,16.1,1.9,memory',
    'M,75,,left,25,26.4,4.8,memory',
    'F,50,54,right,25,18.0,,memory',
    'F,50,54,left,25,20.1,,memory',
    'F,55,59,right,25,17.8,2.6,memory',
  ],
  'nine_hole_peg norms/oxfordgrice2003.csv': [
    'M,21,25,right,,16.41,1.65,memory',
    'M,41,45,left,,18.49,2.42,memory',
    'F,46,50,right,45,17.36,2.01,memory',
    'F,71,,left,31,24.11,5.66,memory',
  ],
  'nine_hole_peg norms/ziari2018_children.csv': [
    'any,7,8,right,,22.84,2.38,seen',
    'any,11,12,left,,21.83,2.27,seen',
  ],
  'box_and_block norms/mathiowetz1985.csv': [
    'M,20,24,right,29,88.2,8.8,memory',
    'M,75,,left,25,61.3,8.4,memory',
    'F,60,64,right,25,76.1,6.9,memory',
    'F,75,,left,26,63.6,7.4,memory',
  ],
  'box_and_block norms/ziari2018_children.csv': [
    'any,9,10,right,,63.21,2.93,seen',
    'any,9,10,left,,64.21,4.47,seen',
  ],
  'grip_strength norms/mathiowetz1985.csv': [
    'M,20,24,right,29,121.0,20.6,memory',
    'M,75,,left,25,55.0,17.0,memory',
    'F,70,74,left,29,41.5,10.2,memory',
  ],
  'grip_strength norms/mathiowetz1986_children.csv': [
    'M,6,7,right,,32.5,4.8,memory',
    'F,18,19,left,,61.7,12.5,memory',
  ],
  'grip_strength norms/massywestropp2011.csv': [
    'M,20,29,nondominant,,45,9.7,seen',
    'F,70,,dominant,,20,5.8,seen',
  ],
  'grip_strength norms/nhanes2013_mean.csv': [
    'M,6,7,left,206,10.7,2.6,seen',
    'M,30,34,right,216,48.5,8.3,seen',
    'F,75,79,left,77,20.1,4.4,seen',
  ],
  'grip_strength norms/nhanes2013_highest.csv': [
    'M,10,11,left,183,19.0,4.3,seen',
    'F,75,79,right,77,22.5,5.1,seen',
  ],
  'grip_strength norms/nhanes2013_either.csv': [
    'M,30,34,any,216,51.9,8.6,seen',
    'F,75,79,any,77,23.0,4.6,seen',
  ],
  'jebsen_taylor norms/jebsen1969.csv': [
    'writing,M,20,59,nondominant,120,32.3,11.8,memory',
    'checkers,F,60,94,dominant,30,3.6,,memory',
    'simulated_feeding,F,20,59,nondominant,120,8.0,1.6,memory',
    'large_heavy,M,60,94,dominant,30,3.5,0.7,memory',
  ],
  'pinch_strength norms/mathiowetz1985.csv': [
    'tip,M,20,24,right,29,18.0,3.0,memory',
    'tip,F,75,,left,26,9.3,2.4,memory',
    'key,M,60,64,left,24,22.2,4.1,memory',
    'palmar,F,45,49,right,25,17.9,3.0,memory',
  ],
  'grip_strength norms/nhanes2013_mean_by_dominance.csv': [
    'M,6,7,dominant,199,11.1,2.6,seen',
    'F,80,,nondominant,112,17.9,5.0,seen',
  ],
  'grip_strength norms/nhanes2013_highest_by_dominance.csv': [
    'M,6,7,dominant,199,12.0,2.7,seen',
    'F,80,,nondominant,112,19.0,5.1,seen',
  ],
  'box_and_block norms/torres2014_children.csv': ['any,6,11,right,386,60.9,,seen'],
  'box_and_block norms/ljubljana_children.csv': ['F,6,7,right,15,38.9,,seen'],
  'stereognosis norms/malika2023.csv': ['any,18,40,right,,3.04,,seen', 'any,18,40,left,,2.09,,seen'],
  'grip_strength norms/steiber2016.csv': ['F,40,44,any,1357,34.5,6.3,seen', 'M,80,90,any,350,33.2,7.5,seen'],
}

/** Whom a row is for, ages apart: what the columns that choose it hold, in their order. */
const groupOf = (row: Readonly<Record<string, string>>): string =>
  Object.entries(row)
    .filter(([column]) => !['age_min', 'age_max', 'n', 'mean', 'sd', 'provenance'].includes(column))
    .map(([, cell]) => cell)
    .join(' ')

const total = (rows: readonly Readonly<Record<string, string>>[], column: string): number =>
  rows.reduce((sum, row) => sum + Math.round(Number(row[column] || 0) * 100), 0) / 100

test('every table of the library is compared', () => {
  const tables = TESTS.flatMap((name) =>
    [...folderOf(name).files.keys()]
      // Tables of bands have no means, those of motions no bands of age: `bands.test.ts`, `motion-tables.test.ts`.
      .filter((path) => path.endsWith('.csv') && 'mean' in (rowsOf(name, path)[0] ?? {}))
      .filter(() => name !== 'range_of_motion')
      .map((path) => `${name} ${path}`),
  )
  expect(Object.keys(COLLECTED).sort()).toEqual(tables.sort())
  expect(Object.keys(SPOTS).sort()).toEqual(tables.sort())
})

describe.each(Object.entries(COLLECTED))('%s', (table, groups) => {
  const [name = '', path = ''] = table.split(' ')
  const rows = rowsOf(name, path)

  test('holds no group of people but those collected', () => {
    expect([...new Set(rows.map(groupOf))].sort()).toEqual(groups.map(([group]) => group).sort())
  })

  test.each(groups)('%s: as many rows, and the same sums', (group, count, ages, n, means, sds) => {
    const own = rows.filter((row) => groupOf(row) === group)
    expect(own).toHaveLength(count)
    expect(2 * total(own, 'age_min') + total(own, 'age_max')).toBe(ages)
    expect(total(own, 'n')).toBe(n)
    expect(total(own, 'mean')).toBe(means)
    expect(total(own, 'sd')).toBe(sds)
  })

  test('rows picked out stand as collected, to the last digit', () => {
    const lines = fileOf(name, path).split('\n')
    for (const row of SPOTS[table] ?? []) expect(lines).toContain(row)
  })

  test('its bands follow each other without overlap or gap', () => {
    const own = groups.map(([group]) => rows.filter((row) => groupOf(row) === group))
    const starts = own.map((bands) => bands.slice(1).map(({ age_min }) => Number(age_min)))
    const ends = own.map((bands) => bands.slice(0, -1).map(({ age_max }) => Number(age_max)))
    expect(starts).toEqual(ends.map((ages) => ages.map((age) => age + 1)))
  })
})
