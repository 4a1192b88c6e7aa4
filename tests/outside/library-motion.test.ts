/** Range of motion against what is published of it, beyond the digits of its tables. */
import { describe, expect, test } from 'vitest'
import { NOTHING_KNOWN } from '../../protocols/client.ts'
import type { Protocol, Text } from '../../protocols/language/model.ts'
import { readProtocol } from '../../protocols/language/read.ts'
import { textOf, wordingFor } from '../../protocols/language/words.ts'
import { figuresHere } from '../../protocols/scoring/change.ts'
import { compareValue } from '../../protocols/scoring/compare.ts'
import { scopeAt } from '../../protocols/scoring/scope.ts'
import { folderOf, rowsOf } from '../library/folders.ts'

const TEST = 'range_of_motion'
function read(): Protocol {
  const found = readProtocol(folderOf(TEST)).protocol
  if (!found) throw new Error('can’t be read')
  return found
}

const protocol = read()

interface Person {
  readonly age: number
  readonly sex: 'F' | 'M'
  readonly hand?: 'right' | 'left'
}

function compared(
  score: string,
  value: number,
  { age, sex, hand = 'right' }: Person,
  told: Record<string, string>,
) {
  const found = compareValue({
    protocol,
    score,
    value,
    age: { from: age, to: age },
    sex,
    hand,
    dominant: 'right',
    affected: null,
    told,
  })
  if ('problem' in found) throw new Error(found.problem)
  return (name: string) => {
    const comparison = found.norms.find((each) => each.norm === name)
    if (!comparison) throw new Error(`There is no table ${name}.`)
    return comparison
  }
}

const means = (table: string, column: string): Map<string, number> =>
  new Map(rowsOf(TEST, `norms/${table}.csv`).map((row) => [String(row[column]), Number(row.mean)]))

// Two readings of one study: means with a decimal from memory, whole degrees seen in a textbook's table.
test('the means of 1979 from memory are those that the textbook prints, rounded', () => {
  const printed = means('boone1979_means', 'motion')
  for (const [motion, mean] of means('boone1979', 'motion')) {
    expect([motion, Math.abs(mean - (printed.get(motion) ?? Number.NaN)) <= 0.51]).toEqual([motion, true])
  }
})

// Seen, abstract of 2011: women are more mobile than men, and motion falls with age.
describe('passive motion in 2011', () => {
  const rows = rowsOf(TEST, 'norms/soucie2011.csv')
  const mean = (motion: string, sex: string, age: string) =>
    Number(rows.find((row) => row.passive_motion === motion && row.sex === sex && row.age_min === age)?.mean)
  const motions = [...new Set(rows.map((row) => String(row.passive_motion)))]

  test.each(motions)('%s: women above men at each age, children above the oldest', (motion) => {
    for (const { age_min = '' } of rows.filter((row) => row.passive_motion === motion)) {
      expect(mean(motion, 'F', age_min)).toBeGreaterThanOrEqual(mean(motion, 'M', age_min))
    }
    for (const sex of ['F', 'M']) expect(mean(motion, sex, '2')).toBeGreaterThan(mean(motion, sex, '45'))
  })
})

// Seen, abstract of 2017: passive motion of the elbow goes 3 to 5 degrees further than active.
test.each([
  ['elbow_flexion', 'F'],
  ['forearm_supination', 'F'],
])(
  '%s: passive means of 20 to 44 years lie about as far above active ones as a study of both found',
  (motion, sex) => {
    const passive = rowsOf(TEST, 'norms/soucie2011.csv').find(
      (row) => row.passive_motion === motion && row.sex === sex && row.age_min === '20',
    )
    const active = means('zwerus2017', 'motion').get(motion) ?? Number.NaN
    expect(Math.abs(Number(passive?.mean) - active - 4)).toBeLessThanOrEqual(1)
  },
)

// Seen, table 4 of 2012: men, dominant side, lateral rotation at 90 degrees: 10th percentile 85, 25th 90, median 100.
test('a cadet with a lateral rotation of 95 degrees lies between the 25th and the 50th percentile', () => {
  const norm = compared('active_range', 95, { age: 19, sex: 'M' }, { motion: 'shoulder_lateral_rotation' })
  // By hand: half-way from 90 to 100, so half-way from 25 to 50.
  expect(norm('cadets_2012').strata[0]?.percentile).toBeCloseTo(37.5, 9)
  const older = compared('active_range', 95, { age: 40, sex: 'M' }, { motion: 'shoulder_lateral_rotation' })
  expect(older('cadets_2012').strata).toEqual([])
})

// Seen, the same table: the median of flexion is 165 degrees in men, far from the handbook's 180.
test('the median of fit young men stands at the 50th percentile, under the handbook and its threshold', () => {
  const norm = compared('active_range', 165, { age: 19, sex: 'M' }, { motion: 'shoulder_flexion' })
  expect(norm('cadets_2012').strata[0]?.percentile).toBeCloseTo(50, 9)
  expect(norm('threshold').strata).toMatchObject([{ figures: { band: 'Under the guide’s threshold' } }])
  expect(norm('handbook').strata).toMatchObject([{ mean: 180, sd: null }])
  expect(norm('handbook').strata[0]?.z ?? null).toBeNull()
})

// Seen, slides that cite the study of 1979: wrist flexion 76.4 (6.3) degrees.
test('a wrist flexion of 70.1 degrees lies one SD below the mean of 1979', () => {
  const norm = compared('active_range', 70.1, { age: 30, sex: 'M' }, { motion: 'wrist_flexion' })
  expect(norm('males_1979').strata[0]?.z).toBeCloseTo(-1, 9)
  // That study had no women, and none is guessed.
  const woman = compared('active_range', 70.1, { age: 30, sex: 'F' }, { motion: 'wrist_flexion' })
  expect(woman('males_1979').strata).toEqual([])
})

// Seen, the textbook's table: 65 to 85 years, elbow extension printed as 4 with a mark for a lack.
test('an elbow that lacks 4 degrees is that of the older group, and not 4 beyond straight', () => {
  const norm = compared('active_range', -4, { age: 70, sex: 'F' }, { motion: 'elbow_extension' })
  expect(norm('older_1984').strata).toMatchObject([{ mean: -4 }])
})

/** Published errors that meet an active reading of this region, in the order of the file. */
function errors(region: string, motion: string): readonly string[] {
  const score = protocol.scores.find(({ name }) => name === 'active_range')
  if (!score) throw new Error('no score')
  const standing = { protocol, facts: NOTHING_KNOWN, trials: [], conditions: {}, orders: [] }
  const scope = scopeAt(standing, { hand: 'right', region, motion })
  const say = (text: Text) => textOf(protocol, wordingFor(protocol, null), text)
  return figuresHere({ protocol, score, value: 60, scope, say }).map(
    ({ statistic, printed }) => `${statistic} ${printed}`,
  )
}

// Seen, abstracts of 2019 and 2001: over joints of fingers and wrist SEM 4 to 11 and a minimal detectable difference of 12 to
// 30 degrees; for the shoulder SEM 11 to 23 with one examiner and 14 to 25 between examiners.
test('each region meets the errors that were published for it, and the elbow none', () => {
  expect(errors('wrist', 'wrist_flexion')).toEqual([
    'SEM 4 deg',
    'SEM 11 deg',
    'MDC95 12 deg',
    'MDC95 30 deg',
  ])
  const shoulder = ['SEM 11 deg', 'SEM 23 deg', 'SEM 14 deg', 'SEM 25 deg']
  expect(errors('shoulder', 'shoulder_flexion')).toEqual(shoulder)
  expect(errors('shoulder_back', 'shoulder_extension')).toEqual(shoulder)
  expect(errors('elbow', 'elbow_flexion')).toEqual([])
})

// Seen, abstract of 2019; 1.96 x sqrt(2) x SEM is the change beyond error at 95 per cent.
test.each([
  [4, 12],
  [11, 30],
])('a SEM of %i degrees agrees with the minimal detectable difference of %i beside it', (sem, printed) => {
  const figures = protocol.change.filter(
    ({ source, of }) => source === 'reissner2019' && of === 'active_range',
  )
  expect(figures.map(({ value }) => value)).toContain(sem)
  expect(figures.map(({ value }) => value)).toContain(printed)
  expect(Math.abs(1.96 * Math.SQRT2 * sem - printed)).toBeLessThan(1)
})
