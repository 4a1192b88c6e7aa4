/** Stereognosis against what is published of it, through the door that the command line uses. */
import { expect, test } from 'vitest'
import { readProtocol } from '../../protocols/language/read.ts'
import { compareValue } from '../../protocols/scoring/compare.ts'
import { folderOf } from '../library/folders.ts'

function compared(score: string, value: number, age: number, hand: 'right' | 'left') {
  const { protocol } = readProtocol(folderOf('stereognosis'))
  if (!protocol) throw new Error('can’t be read')
  const found = compareValue({
    protocol,
    score,
    value,
    age: { from: age, to: age },
    sex: 'unknown',
    hand,
    dominant: 'right',
    affected: null,
    told: {},
  })
  if ('problem' in found) throw new Error(found.problem)
  const [norm] = found.norms
  if (!norm) throw new Error('no table')
  return norm
}

// Seen, teaching page of Wayne State University: 90 to 100 per cent of at least five things are expected.
test.each([
  [10, 'As many as expected, 90 to 100 per cent'],
  [9, 'As many as expected, 90 to 100 per cent'],
  [8, 'Fewer than expected'],
  [0, 'Fewer than expected'],
])('%i of 10 told: %s', (told, band) => {
  expect(compared('told', told, 70, 'left').strata).toMatchObject([{ figures: { band } }])
})

// Seen, abstract of 2023: adults of 18 to 40 years, mean 3.04 s with the right hand and 2.09 s with the left.
test.each([
  ['right', 3.04],
  ['left', 2.09],
] as const)(
  'the mean of the %s hand stands beside a time, and without a spread gives no z-score',
  (hand, mean) => {
    const norm = compared('time_per_thing', 4, 30, hand)
    expect(norm.strata).toMatchObject([{ hand, mean, sd: null }])
    expect(norm.strata[0]?.z ?? null).toBeNull()
    expect(norm.strata[0]?.percentile ?? null).toBeNull()
  },
)

// Seen, the same abstract: its people were 18 to 40 years old, so that nobody older has a row.
test.each([17, 41])('at %i years the table of times has no row', (age) => {
  expect(compared('time_per_thing', 4, age, 'right').strata).toEqual([])
})
