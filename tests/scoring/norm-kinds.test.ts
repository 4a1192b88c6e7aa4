import { describe, expect, test } from 'vitest'
import { buildResult } from '../../protocols/scoring/build-result.ts'
import { compareValue } from '../../protocols/scoring/compare.ts'
import { type NormComparison, result } from '../../protocols/scoring/result.ts'
import { percentileRanks } from '../../protocols/scoring/statistics/percentile-rank.ts'
import { rankInTable } from '../../protocols/scoring/percentile-table.ts'
import { factsOf, givenOn, protocolOf, standingOf, trialOf, type TrialPart } from './invented.ts'

const STEPS = `
conditions: { board: { set-by: kit, options: { oak: Oak, cork: Cork } } }
steps:
  - { ask: work, text: What kind of work?, options: { desk: At a desk, heavy: Heavy } }
  - for-each: hand
    in: hands
    order: [right-first]
    steps:
      - { position: seated, text: Sit. }
      - { instruct: explain, text: Do it. }
      - { timed: carry, start: { said: go }, stop: { seen: home } }
`
const SCORES = `
scores:
  - { score: time, title: Time, each: hand, value: min(carry.time), unit: s, better: lower, decimals: 1 }
  - { score: speed, title: Speed, each: hand, value: 600 / time, unit: /s, better: higher, decimals: 1 }
`
const norm = (name: string, of: string, as: string, more = ''): string =>
  `  - { norm: ${name}, title: ${name}, of: ${of}, table: norms/${name}.csv, as: ${as}, gathered: { board: unknown }, differs: caution, population: Adults, source: made_up${more} }\n`

/** A protocol with one table, and what it says of these times. */
function compared(
  norms: string,
  csv: string,
  { right, score = 'time', facts = {}, more = [] }: Case,
): NormComparison {
  const [, name = ''] = /norm: (\w+)/.exec(norms) ?? []
  const protocol = protocolOf({
    steps: STEPS,
    scores: SCORES,
    more: `norms:\n${norms}`,
    files: { [`norms/${name}.csv`]: csv },
  })
  const trials = [
    trialOf({ step: 'carry', place: { hand: 'right' }, readings: { time: right } }),
    ...more.map(trialOf),
  ]
  const standing = standingOf({ protocol, trials, facts: factsOf(facts), orders: [] })
  const built = buildResult({
    protocol,
    administration: givenOn('2026-06-15'),
    standing,
    earlier: [],
    verified: new Map(),
  })
  const [found] =
    result.parse(built).scores.find((one) => one.score === score && one.place.hand === 'right')?.norms ?? []
  if (found === undefined) throw new Error('no comparison')
  return found
}

interface Case {
  readonly right: number
  readonly score?: string
  readonly facts?: Parameters<typeof factsOf>[0]
  readonly more?: readonly TrialPart[]
}

describe('tabulated percentiles', () => {
  const table = norm('ranks', 'time', 'percentiles')
  const csv = 'sex,age_min,age_max,hand,n,p5,p25,p50,p75,p95,provenance\nany,,,any,80,10,20,30,40,60,seen\n'
  const at = (right: number) => compared(table, csv, { right }).strata[0]

  test('are linear in the value between two of them, and turned where lower is better', () => {
    // Midway between 20 (25th) and 30 (50th): 37.5 from the lowest value, so 62.5 per cent are slower.
    expect(at(25)?.percentile).toBe(62.5)
    expect(at(30)?.percentile).toBe(50)
    expect(at(55)?.percentile).toBeCloseTo(100 - 90, 12)
    expect(at(25)?.figures).toMatchObject({ under: { rank: 25, value: 20 }, over: { rank: 50, value: 30 } })
    expect(at(25)).toMatchObject({ z: null, definition: 'tabulated', mean: null, sd: null })
  })

  test('nothing is made up beyond the outermost: a long time lies below the 5th', () => {
    expect([at(61)?.percentile, at(61)?.figures]).toMatchObject([
      null,
      { beyond: { side: 'below', rank: 5 } },
    ])
    expect([at(9)?.percentile, at(9)?.figures]).toMatchObject([null, { beyond: { side: 'above', rank: 95 } }])
    expect(at(60)?.percentile).toBe(5)
    expect(compared(table, csv, { right: 61 }).status).toBe('used')
  })

  test('the same table of a score where higher is better isn’t turned', () => {
    const speeds = norm('speeds', 'speed', 'percentiles')
    const found = (right: number) => compared(speeds, csv, { right, score: 'speed' }).strata[0]
    expect(found(24)?.percentile).toBe(37.5)
    expect(found(100)?.figures).toMatchObject({ beyond: { side: 'below', rank: 5 } })
  })

  test('several percentiles that share a value give the middle of their ranks', () => {
    const ties = [5, 10, 25, 50].map((rank, index) => ({ rank, value: [1, 1, 2, 4][index] ?? 0 }))
    expect(rankInTable(ties, 1).rank).toBe(7.5)
    expect(rankInTable(ties, 3).rank).toBe(37.5)
    expect(rankInTable(ties, 0.5).rank).toBeNull()
  })
})

describe('L, M and S', () => {
  const table = norm('curves', 'time', 'lms')
  const csv = 'sex,age_min,age_max,hand,n,l,m,s,provenance\nany,,,any,,1,30,0.1,seen\n'

  test('a power of one is mean and coefficient of variation, turned once where lower is better', () => {
    const [row] = compared(table, csv, { right: 33 }).strata
    expect(row?.z).toBeCloseTo(1, 12)
    expect(row?.performanceZ).toBeCloseTo(-1, 12)
    // Φ(-1) = .15866 in every normal table.
    expect(row?.percentile).toBeCloseTo(15.866, 3)
    expect(row?.figures).toEqual({ statistic: 'lms', l: 1, m: 30, s: 0.1 })
  })

  test('more than three standard deviations away is marked', () => {
    expect(compared(table, csv, { right: 40 }).caution.map(({ code }) => code)).toContain('far_out')
  })
})

describe('cut-offs and bands', () => {
  const cut = norm('cut', 'time', 'cut-offs', ', bands: { usual: As usual, slow: Slower than usual }')
  const cutCsv = 'cut,below,above,equal,provenance\n30,usual,slow,above,seen\n'
  const words = (right: number) => {
    const figures = compared(cut, cutCsv, { right }).strata[0]?.figures
    return figures?.statistic === 'cut-offs' ? [figures.side, figures.band] : null
  }

  test('a cut-off says its side in the table’s own words, and to which the cut itself belongs', () => {
    expect(words(29.9)).toEqual(['below', 'As usual'])
    expect(words(30)).toEqual(['above', 'Slower than usual'])
    expect(words(31)).toEqual(['above', 'Slower than usual'])
  })

  const bands = norm('grades', 'time', 'bands', ', bands: { full: Full, some: Some, none: None }')
  const bandsCsv = 'from,below,band,provenance\n,20,full,seen\n20,40,some,seen\n50,,none,memory\n'
  const band = (right: number) => compared(bands, bandsCsv, { right })

  test('a band holds its lower end and not its upper', () => {
    expect(band(19.99).strata[0]?.figures).toMatchObject({ band: 'Full', from: null, below: 20 })
    expect(band(20).strata[0]?.figures).toMatchObject({ band: 'Some', from: 20, below: 40 })
    expect(band(50).strata[0]).toMatchObject({ line: 4, figures: { band: 'None', below: null } })
    expect(band(50).strata).toHaveLength(1)
  })

  test('a value between two bands is in none, and that is said', () => {
    expect(band(45).status).toBe('no_band')
    expect(band(45).strata[0]?.figures).toMatchObject({ band: null })
  })
})

const ownTable = norm('own', 'time', 'mean-sd')
const csvBy = (column: string, a: string, b: string) =>
  `sex,age_min,age_max,hand,n,mean,sd,${column},provenance\nany,,,any,100,30,2,${a},seen\nany,,,any,100,40,2,${b},seen\n`
const meansOf = (found: NormComparison) => found.strata.map(({ mean }) => mean)
const codesOf = (found: NormComparison) => found.caution.map(({ code }) => code)
const afterSchool = (schoolingYears: number | null) =>
  compared(ownTable, csvBy('schooling', '0..8', '9..'), { right: 30, facts: { schoolingYears } })
const answered = (value: string): TrialPart[] => [
  { step: 'work', place: {}, readings: { answer: value as never }, unit: '1' },
]

describe('columns of the ownTable’s own choose the row', () => {
  test('years of schooling; unknown, every row is shown and said', () => {
    expect(meansOf(afterSchool(8))).toEqual([30])
    expect(meansOf(afterSchool(12))).toEqual([40])
    expect(meansOf(afterSchool(null))).toEqual([30, 40])
    expect([afterSchool(null).status, codesOf(afterSchool(null))]).toMatchObject([
      'several',
      expect.arrayContaining(['column_unknown']),
    ])
    expect(afterSchool(12).strata[0]?.chosenBy).toEqual({ schooling: '9..' })
  })

  test('the affected side, and whether the arm is the affected one', () => {
    const arm = factsOf().arms.right
    const arms = { right: { ...arm, status: 'affected' as const }, left: arm }
    const side = csvBy('affected_side', 'right', 'left')
    expect(meansOf(compared(ownTable, side, { right: 30, facts: { arms } }))).toEqual([30])
    const ofArm = csvBy('arm', 'unaffected', 'affected')
    expect(meansOf(compared(ownTable, ofArm, { right: 30, facts: { arms } }))).toEqual([40])
    const unknown = { right: { ...arm, status: 'unknown' as const }, left: arm }
    expect(meansOf(compared(ownTable, side, { right: 30, facts: { arms: unknown } }))).toEqual([30, 40])
  })

  test('an answer to what was asked', () => {
    const asked = csvBy('work', 'desk', 'heavy')
    expect(meansOf(compared(ownTable, asked, { right: 30, more: answered('heavy') }))).toEqual([40])
    expect(meansOf(compared(ownTable, asked, { right: 30 }))).toEqual([30, 40])
  })

  test('the condition as it was recorded', () => {
    expect(meansOf(compared(ownTable, csvBy('board', 'cork', 'oak'), { right: 30 }))).toEqual([40])
  })

  test('a bare value is compared with what is told of the columns', () => {
    const protocol = protocolOf({
      steps: STEPS,
      scores: SCORES,
      more: `norms:\n${ownTable}`,
      files: { 'norms/own.csv': csvBy('work', 'desk', 'heavy') },
    })
    const found = compareValue({
      protocol,
      score: 'time',
      value: 30,
      age: null,
      sex: 'F',
      hand: 'right',
      dominant: null,
      affected: null,
      told: { work: 'heavy' },
    })
    expect('norms' in found && found.norms.map(meansOf)).toEqual([[40]])
  })
})

describe('STD-INT-6 a percentile rank has three definitions', () => {
  // By hand: eight people with 1 2 2 3 3 3 4 5.
  const group = [1, 2, 2, 3, 3, 3, 4, 5]
  test.each([
    [0, 0, 0, 0],
    [1, 0, 12.5, 6.25],
    [2, 12.5, 37.5, 25],
    [2.5, 37.5, 37.5, 37.5],
    [3, 37.5, 75, 56.25],
    [4, 75, 87.5, 81.25],
    [5, 87.5, 100, 93.75],
    [6, 100, 100, 100],
  ])('%d: below %d, at or below %d, half of ties %d', (value, below, atOrBelow, halfOfTies) => {
    expect(percentileRanks(group, value)).toEqual({ below, atOrBelow, halfOfTies })
  })

  test('nobody has no ranks', () => {
    expect(percentileRanks([], 1)).toBeNull()
  })
})
