import { describe, expect, test } from 'vitest'
import type { Birth } from '../../protocols/client.ts'
import { buildResult, type Given } from '../../protocols/scoring/build-result.ts'
import { NORM_CAUTIONS } from '../../protocols/scoring/reasons.ts'
import { type NormComparison, result } from '../../protocols/scoring/result.ts'
import { carries, factsOf, givenOn, protocolOf, standingOf } from './invented.ts'

const CSV = `sex,age_min,age_max,hand,n,mean,sd,provenance
F,20,39,dominant,25,30,2,memory
F,20,39,nondominant,25,31,2,memory
F,40,59,dominant,200,33,3,seen
F,40,59,nondominant,200,34,3,seen
M,20,39,dominant,,29,2,memory
M,20,39,nondominant,,30,2,memory
M,40,59,dominant,60,32,,seen
M,40,59,nondominant,60,33,,seen
`
const NORMS = `
norms:
  - { norm: adults, title: Adults, of: total, table: norms/adults.csv, as: mean-sd, unit: s, gathered: { board: oak, fill: 60 s, start_event: spoken_go },
      differs: withhold, population: Invented adults, source: made_up }
  - { norm: minutes, title: In minutes, of: total, table: norms/minutes.csv, as: mean-sd, unit: min, gathered: { board: cork, fill: unknown, start_event: spoken_go },
      differs: caution, population: Invented adults, source: made_up }
`
const MINUTES = `sex,age_min,age_max,hand,n,mean,sd,provenance
any,,,right,100,0.5,0.05,seen
any,,,left,100,0.5,0.05,seen
`
const protocol = protocolOf({ more: NORMS, files: { 'norms/adults.csv': CSV, 'norms/minutes.csv': MINUTES } })

interface Case {
  readonly facts?: Parameters<typeof factsOf>[0]
  readonly conditions?: Readonly<Record<string, string>>
  readonly given?: Partial<Given>
  readonly verified?: ReadonlyMap<string, string>
  readonly trials?: ReturnType<typeof carries>
  readonly on?: string
}

function compared(
  norm: string,
  hand: string,
  { facts, conditions, given, verified, trials, on }: Case = {},
): NormComparison {
  const built = buildResult({
    protocol,
    administration: givenOn(on ?? '2026-06-15', given),
    standing: standingOf({
      protocol,
      facts: factsOf(facts),
      conditions: conditions ?? { board: 'oak', fill: '60 s' },
      ...(trials === undefined ? {} : { trials }),
    }),
    earlier: [],
    verified: verified ?? new Map(),
  })
  const score = result.parse(built).scores.find((one) => one.score === 'total' && one.place.hand === hand)
  const found = score?.norms.find((one) => one.norm === norm)
  if (found === undefined) throw new Error(`${norm} is missing`)
  return found
}

const codes = ({ caution }: NormComparison): readonly string[] => caution.map(({ code }) => code)
const bands = ({ strata }: NormComparison): readonly string[] =>
  strata.map(({ sex, ageMin, hand }) => `${sex} ${ageMin} ${hand}`)
const age = (date: string): Birth => ({ known: 'date', date })

describe('one row', () => {
  test('the row of sex, age and hand is used, by the size of its group', () => {
    const found = compared('adults', 'left')
    expect(found.status).toBe('used')
    expect(bands(found)).toEqual(['F 20 nondominant'])
    const [stratum] = found.strata
    expect(stratum?.line).toBe(3)
    expect(stratum?.z).toBe(-0.5)
    expect(stratum?.performanceZ).toBe(0.5)
    expect(stratum?.definition).toBe('modified-t')
    // t = 0.5 / sqrt(26/25) = 0.4902903 with 24 degrees of freedom: 68.58 % below (a t table gives .685 at .49).
    expect(stratum?.percentile).toBeCloseTo(68.58, 1)
    expect(stratum?.percentileInterval?.[0]).toBeLessThan(68)
    expect(stratum?.percentileInterval?.[1]).toBeGreaterThan(70)
    expect(found.standing).toBe('memory')
  })

  test('a large group is compared by the normal curve', () => {
    const [stratum] = compared('adults', 'left', { facts: { birth: age('1980-01-01') } }).strata
    expect(stratum?.definition).toBe('normal')
    expect(stratum?.z).toBeCloseTo(-4 / 3, 12)
    // Φ(4/3) = .90879 in every normal table.
    expect(stratum?.percentile).toBeCloseTo(90.879, 2)
  })

  test('a table in another unit is brought to the unit of the score, exactly', () => {
    const [stratum] = compared('minutes', 'right').strata
    expect([stratum?.mean, stratum?.sd]).toEqual([30, 3])
    expect(stratum?.z).toBeCloseTo(-2 / 3, 12)
  })

  test('a mark of the clinic is carried, with the name', () => {
    const found = compared('adults', 'left', { verified: new Map([['adults', 'B. Verifier']]) })
    expect([found.standing, found.verifiedBy]).toEqual(['verified', 'B. Verifier'])
  })

  test('a row without a spread gives no z', () => {
    const found = compared('adults', 'left', { facts: { sex: 'M', birth: age('1980-01-01') } })
    expect(found.status).toBe('no_spread')
    expect(found.strata.map(({ z, percentile }) => [z, percentile])).toEqual([[null, null]])
  })

  test('a group of unknown size gives no interval, and that is said', () => {
    const found = compared('adults', 'left', { facts: { sex: 'M' } })
    expect(found.strata[0]?.percentileInterval).toBeNull()
    expect(codes(found)).toContain('size_unknown')
  })

  test('more than three standard deviations away is marked', () => {
    const slow = carries(() => ({ readings: { time: 25 } }))
    expect(codes(compared('adults', 'left', { trials: slow }))).toContain('far_out')
  })
})

describe('STD-INT-2 what is out of range or not known is said, never guessed', () => {
  test.each<[string, string, Case, NormComparison['status'], string[], string[]]>([
    [
      '19 years, the day before',
      'right',
      { facts: { birth: age('2006-06-16') } },
      'out_of_range',
      [],
      ['table_ages'],
    ],
    ['20 years, on the day', 'right', { facts: { birth: age('2006-06-15') } }, 'used', ['F 20 dominant'], []],
    [
      '39 years, the last day',
      'right',
      { facts: { birth: age('1986-06-16') } },
      'used',
      ['F 20 dominant'],
      [],
    ],
    ['40 years, on the day', 'right', { facts: { birth: age('1986-06-15') } }, 'used', ['F 40 dominant'], []],
    ['60 years', 'right', { facts: { birth: age('1966-01-01') } }, 'out_of_range', [], ['table_ages']],
    [
      'sex unknown',
      'right',
      { facts: { sex: 'unknown' } },
      'several',
      ['F 20 dominant', 'M 20 dominant'],
      ['sex_unknown', 'size_unknown'],
    ],
    [
      'dominance unknown',
      'right',
      { facts: { dominantBefore: 'unknown' } },
      'several',
      ['F 20 dominant', 'F 20 nondominant'],
      ['dominance_unknown'],
    ],
    [
      'mixed dominance',
      'left',
      { facts: { dominantBefore: 'mixed' } },
      'several',
      ['F 20 dominant', 'F 20 nondominant'],
      ['dominance_unknown'],
    ],
    ['left dominant', 'left', { facts: { dominantBefore: 'left' } }, 'used', ['F 20 dominant'], []],
    [
      'birth unknown',
      'right',
      { facts: { birth: { known: 'no' } } },
      'several',
      ['F 20 dominant', 'F 40 dominant'],
      ['age_unknown'],
    ],
    [
      '39 or 40',
      'right',
      { facts: { birth: { known: 'year', year: 1986 } } },
      'several',
      ['F 20 dominant', 'F 40 dominant'],
      ['age_uncertain'],
    ],
    ['30 or 31', 'right', { facts: { birth: { known: 'year', year: 1995 } } }, 'used', ['F 20 dominant'], []],
    [
      '19 or 20',
      'right',
      { facts: { birth: { known: 'year', year: 2006 } } },
      'used',
      ['F 20 dominant'],
      ['age_uncertain', 'partly_without_row'],
    ],
    [
      'born tomorrow',
      'right',
      { facts: { birth: age('2026-06-16') } },
      'unavailable',
      [],
      ['age_impossible'],
    ],
  ])('%s', (_what, hand, given, status, rows, cautions) => {
    const found = compared('adults', hand, given)
    expect(found.status).toBe(status)
    expect(bands(found)).toEqual(rows)
    expect(codes(found)).toEqual(cautions)
  })

  test("the table's own ages are given beside out of range", () => {
    const found = compared('adults', 'right', { facts: { birth: age('1950-01-01') } })
    expect(found.caution).toEqual([{ code: 'table_ages', detail: { from: 20, to: 59 } }])
  })

  test('a value that is missing or a bound is not compared', () => {
    const refused = carries((_hand, _task, round) =>
      round === 2 ? { outcome: 'refused', readings: {} } : {},
    )
    expect(compared('adults', 'left', { trials: refused })).toMatchObject({
      status: 'unavailable',
      strata: [],
    })
    const limit = carries(() => ({ outcome: 'limit', readings: {} }))
    expect(codes(compared('adults', 'left', { trials: limit }))).toEqual(['bound'])
  })
})

const deviation = (norms: 'kept' | 'caution' | 'withheld') => ({
  code: 'told' as const,
  what: 'Two runs in the corridor',
  reason: 'The room was taken',
  norms,
  at: '2026-06-15T10:01:00+02:00',
  by: 'A. Examiner',
})

describe('how conditions stood decides whether norms are shown', () => {
  test('a condition that differs withholds the norms that say so, and is a caution for the others', () => {
    const cork = { board: 'cork', fill: '60 s' }
    const strict = compared('adults', 'left', { conditions: cork })
    expect([strict.status, strict.strata.length]).toEqual(['withheld', 0])
    expect(strict.caution[0]).toEqual({
      code: 'condition_differs',
      detail: { condition: 'board', here: 'cork', there: 'oak' },
    })
    const lenient = compared('minutes', 'left', { conditions: { board: 'oak', fill: '60 s' } })
    expect(lenient.status).toBe('used')
    expect(codes(lenient)).toEqual(['condition_differs', 'conditions_unknown'])
  })

  test('60 s and 1 min are one condition, 90 s is another', () => {
    expect(compared('adults', 'left', { conditions: { board: 'oak', fill: '1 min' } }).status).toBe('used')
    expect(compared('adults', 'left', { conditions: { board: 'oak', fill: '90 s' } }).status).toBe('withheld')
  })

  test('a condition that nobody recorded is unknown, not the usual one', () => {
    const found = compared('adults', 'left', { conditions: { board: 'oak' } })
    expect(found.status).toBe('used')
    expect(found.caution).toEqual([{ code: 'conditions_unknown', detail: { conditions: 'fill', count: 1 } }])
  })

  test('a deviation that touches what is measured withholds them, one that may marks them', () => {
    const withheld = compared('minutes', 'left', { given: { deviations: [deviation('withheld')] } })
    expect([withheld.status, withheld.strata.length]).toEqual(['withheld', 0])
    expect(codes(withheld)).toContain('modified')
    const marked = compared('adults', 'left', { given: { deviations: [deviation('caution')] } })
    expect([marked.status, codes(marked)]).toEqual(['used', ['deviated']])
    const kept = compared('adults', 'left', { given: { deviations: [deviation('kept')] } })
    expect(codes(kept)).toEqual([])
  })
})

describe('STD-INT-5 the direction is turned once', () => {
  test('a mirrored protocol gives the same client the same standing', () => {
    const mirror = protocolOf({
      scores: `
scores:
  - { score: total, title: Total, each: hand, value: "100 - sum(carry.time) / 3", unit: s, better: higher, decimals: 1 }
  - { score: plain, title: Total, each: hand, value: "sum(carry.time) / 3", unit: s, better: lower, decimals: 1 }
`,
      more: `
norms:
  - { norm: up, title: Up, of: total, table: norms/up.csv, as: mean-sd, unit: s, gathered: {}, differs: caution, population: A, source: made_up }
  - { norm: down, title: Down, of: plain, table: norms/down.csv, as: mean-sd, unit: s, gathered: {}, differs: caution, population: A, source: made_up }
`,
      files: {
        'norms/up.csv': 'sex,age_min,age_max,hand,n,mean,sd,provenance\nany,,,any,30,67,2,seen\n',
        'norms/down.csv': 'sex,age_min,age_max,hand,n,mean,sd,provenance\nany,,,any,30,33,2,seen\n',
      },
    })
    const built = buildResult({
      protocol: mirror,
      administration: givenOn('2026-06-15'),
      standing: standingOf({ protocol: mirror }),
      earlier: [],
      verified: new Map(),
    })
    const [up, down] = ['total', 'plain'].map((name) => {
      const score = built.scores.find((one) => one.score === name && one.place.hand === 'left')
      const stratum = score?.norms[0]?.strata[0]
      return { z: stratum?.z, performance: stratum?.performanceZ, percentile: stratum?.percentile }
    })
    expect(up?.performance).toBe(down?.performance)
    expect(up?.percentile).toBe(down?.percentile)
    expect(up?.z).toBe(-(down?.z ?? 0))
    expect(up?.performance).toBe(0.5)
  })
})

test('STD-INT-1 a result names source, stratum, size, statistic, definition, and keeps the two intervals apart', () => {
  const named = protocolOf({
    more: `${NORMS}
change:
  - { of: total, sem: 1 s, population: Invented clients, n: 40, source: made_up }
`,
    files: { 'norms/adults.csv': CSV, 'norms/minutes.csv': MINUTES },
  })
  const built = buildResult({
    protocol: named,
    administration: givenOn('2026-06-15'),
    standing: standingOf({ protocol: named }),
    earlier: [],
    verified: new Map(),
  })
  const score = built.scores.find((one) => one.score === 'total' && one.place.hand === 'left')
  expect(score?.norms[0]).toMatchObject({
    source: { id: 'made_up', cite: 'Invented for a test' },
    population: 'Invented adults',
    statistic: 'mean-sd',
    strata: [
      {
        sex: 'F',
        ageMin: 20,
        ageMax: 39,
        hand: 'nondominant',
        n: 25,
        mean: 31,
        sd: 2,
        definition: 'modified-t',
      },
    ],
  })
  // Of the norm group's size, in per cent; and of the measurement, in seconds around the value: 1.96 SEM.
  expect(score?.norms[0]?.strata[0]?.percentileInterval).toHaveLength(2)
  expect(score?.error).toMatchObject([
    { statistic: 'SEM', printed: '1 s', population: 'Invented clients', n: 40 },
  ])
  expect(score?.error[0]?.half).toBeCloseTo(1.959963984540054, 12)
})

test('every caution that norms give is one of the list, with the details named there', () => {
  const cases: Case[] = [
    {},
    { facts: { sex: 'unknown', birth: { known: 'no' }, dominantBefore: 'unknown' } },
    { conditions: {} },
    { conditions: { board: 'cork', fill: '90 s' } },
    { facts: { birth: age('1950-01-01') } },
    { trials: [] },
  ]
  const cautions = cases.flatMap((one) =>
    ['adults', 'minutes'].flatMap((norm) => compared(norm, 'left', one).caution),
  )
  expect(cautions.length).toBeGreaterThan(6)
  for (const { code, detail } of cautions)
    expect([...(NORM_CAUTIONS[code as keyof typeof NORM_CAUTIONS] ?? ['not in the list'])].sort()).toEqual(
      Object.keys(detail).sort(),
    )
})
