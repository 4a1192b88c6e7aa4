/**
 * A value against the library's tables, through the door that the command line uses, with the row and the z-score
 * worked out by hand from the published row. Source and how far it was seen stand beside each.
 */
import { describe, expect, test } from 'vitest'
import { readProtocol } from '../../protocols/language/read.ts'
import { compareValue } from '../../protocols/scoring/compare.ts'
import type { NormComparison } from '../../protocols/scoring/result.ts'
import { folderOf } from '../library/folders.ts'

interface Person {
  readonly age: number
  readonly sex: 'F' | 'M' | 'unknown'
  readonly hand: 'right' | 'left' | null
  readonly dominant?: 'right' | 'left'
}

function compared(
  name: string,
  score: string,
  value: number,
  person: Person,
): (norm: string) => NormComparison {
  const { protocol } = readProtocol(folderOf(name))
  if (!protocol) throw new Error(`${name} can't be read`)
  const { age, sex, hand, dominant = null } = person
  const found = compareValue({
    protocol,
    score,
    value,
    age: { from: age, to: age },
    sex,
    hand,
    dominant,
    affected: null,
    told: {},
  })
  if ('problem' in found) throw new Error(found.problem)
  return (norm) => {
    const comparison = found.norms.find((each) => each.norm === norm)
    if (!comparison) throw new Error(`There is no table ${norm}.`)
    return comparison
  }
}

describe('nine-hole peg', () => {
  // Memory: 1985, men of 30 to 34, right: 17.7 s (2.5), n 27. 2003, men of 31 to 35, right: 17.54 s (2.70).
  test('a man of 34, right hand, 20.2 s: one SD slower in 1985', () => {
    const norm = compared('nine_hole_peg', 'time', 20.2, { age: 34, sex: 'M', hand: 'right' })
    expect(norm('adults_1985')).toMatchObject({ status: 'used', standing: 'memory' })
    expect(norm('adults_1985').strata).toMatchObject([
      { ageMin: 30, ageMax: 34, hand: 'right', n: 27, mean: 17.7, sd: 2.5 },
    ])
    expect(norm('adults_1985').strata[0]?.z).toBeCloseTo(1, 9)
    expect(norm('adults_1985').strata[0]?.performanceZ).toBeCloseTo(-1, 9)
    expect(norm('adults_2003').strata[0]?.z).toBeCloseTo((20.2 - 17.54) / 2.7, 9)
  })

  // Memory: the bands of both tables.
  test('the tables cut the ages differently: 20 has no row in 2003, 72 falls into 70-74 and into 71 and over', () => {
    const young = compared('nine_hole_peg', 'time', 16, { age: 20, sex: 'F', hand: 'left' })
    expect(young('adults_1985').strata).toMatchObject([{ ageMin: 20, ageMax: 24 }])
    expect(young('adults_2003')).toMatchObject({ status: 'out_of_range', strata: [] })
    const old = compared('nine_hole_peg', 'time', 24, { age: 72, sex: 'M', hand: 'right' })
    expect(old('adults_1985').strata).toMatchObject([{ ageMin: 70, ageMax: 74, mean: 22 }])
    expect(old('adults_2003').strata).toMatchObject([{ ageMin: 71, ageMax: null, mean: 25.79 }])
  })

  // Memory: two SDs of 1985 could not be recalled and are blank.
  test('a woman of 52 has a mean but no z-score in 1985', () => {
    const norm = compared('nine_hole_peg', 'time', 18, { age: 52, sex: 'F', hand: 'right' })
    expect(norm('adults_1985')).toMatchObject({ status: 'no_spread' })
    expect(norm('adults_1985').strata).toMatchObject([{ mean: 18, sd: null, z: null, percentile: null }])
  })

  // Seen, abstract: children of 7 to 8 years, right 22.84 s (2.38), both sexes.
  test('a child of 7 is out of both tables for adults and meets the one for children', () => {
    const norm = compared('nine_hole_peg', 'time', 22.84, { age: 7, sex: 'unknown', hand: 'right' })
    expect(norm('adults_1985').status).toBe('out_of_range')
    expect(norm('adults_2003').status).toBe('out_of_range')
    expect(norm('children_2018')).toMatchObject({ status: 'used', standing: 'seen' })
    expect(norm('children_2018').strata).toMatchObject([{ ageMin: 7, ageMax: 8, mean: 22.84, z: 0 }])
  })

  test('a left-hander’s right hand meets the column for right hands', () => {
    const norm = compared('nine_hole_peg', 'time', 17, { age: 40, sex: 'F', hand: 'right', dominant: 'left' })
    expect(norm('adults_1985').strata).toMatchObject([{ hand: 'right', mean: 16.8 }])
  })
})

describe('box and block', () => {
  // Memory: 1985, men of 60 to 64, right: 71.3 (8.8), n 24.
  test('a man of 61, right hand, 80 blocks', () => {
    const norm = compared('box_and_block', 'blocks', 80, { age: 61, sex: 'M', hand: 'right' })('adults_1985')
    expect(norm.strata).toMatchObject([{ n: 24, mean: 71.3, sd: 8.8 }])
    expect(norm.strata[0]?.z).toBeCloseTo(8.7 / 8.8, 9)
    expect(norm.population).toContain('United States')
  })

  test('with the sex unknown both rows stand there', () => {
    const norm = compared('box_and_block', 'blocks', 80, { age: 61, sex: 'unknown', hand: 'right' })(
      'adults_1985',
    )
    expect(norm.status).toBe('several')
    expect(norm.strata.map(({ sex, mean }) => [sex, mean])).toEqual([
      ['M', 71.3],
      ['F', 76.1],
    ])
  })
})

describe('grip strength', () => {
  // Memory: 1985, women of 30 to 34, right: 78.7 lbf (19.2), n 26; 1 lbf is 0.45359237 kgf exactly.
  test('STD-UNIT-3: a table in pounds-force is met in kilogram-force by the defined factor', () => {
    const value = 78.7 * 0.45359237
    const norm = compared('grip_strength', 'mean_of_3', value, { age: 34, sex: 'F', hand: 'right' })(
      'adults_1985',
    )
    expect(norm.strata[0]?.mean).toBeCloseTo(35.697719519, 9)
    expect(norm.strata[0]?.sd).toBeCloseTo(8.708973504, 9)
    expect(norm.strata[0]?.z).toBeCloseTo(0, 9)
  })

  // Seen, worked out from public records: men of 30 to 34, right: mean of three 48.5 (8.3), highest 51.2 (8.8).
  test('mean and highest each meet the table of their own rule', () => {
    const person: Person = { age: 31, sex: 'M', hand: 'right' }
    const mean = compared('grip_strength', 'mean_of_3', 48.5, person)('survey_2013_mean')
    const highest = compared('grip_strength', 'highest_of_3', 51.2, person)('survey_2013_highest')
    expect(mean.strata).toMatchObject([{ mean: 48.5, sd: 8.3, z: 0 }])
    expect(highest.strata).toMatchObject([{ mean: 51.2, sd: 8.8, z: 0 }])
    expect(() => compared('grip_strength', 'highest_of_3', 51.2, person)('adults_1985')).toThrow('no table')
  })

  // Seen, transcription of the supplement: men of 80 to 90: 33.2 (7.5); seen, survey: men of 80 and over.
  test('the highest of both hands needs no hand', () => {
    const norm = compared('grip_strength', 'highest_of_both', 33.2, { age: 85, sex: 'M', hand: null })
    expect(norm('panel_2016').strata).toMatchObject([{ ageMin: 80, ageMax: 90, z: 0 }])
    expect(norm('survey_2013_both').strata).toMatchObject([{ ageMin: 80, ageMax: null }])
  })

  // Seen on a secondary page: 2011, men of 20 to 29: dominant 47 (9.5), other 45 (9.7).
  test('a table by dominance asks for dominance, and shows both rows where it isn’t known', () => {
    const known = compared('grip_strength', 'mean_of_3', 45, {
      age: 25,
      sex: 'M',
      hand: 'right',
      dominant: 'left',
    })
    expect(known('adults_2011').strata).toMatchObject([{ hand: 'nondominant', mean: 45, z: 0 }])
    const unknown = compared('grip_strength', 'mean_of_3', 45, { age: 25, sex: 'M', hand: 'right' })
    expect(unknown('adults_2011').strata.map(({ hand }) => hand)).toEqual(['dominant', 'nondominant'])
  })
})
