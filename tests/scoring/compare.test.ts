import { describe, expect, test } from 'vitest'
import { compareValue, type CompareRequest, readAge } from '../../protocols/scoring/compare.ts'
import { protocolOf } from './invented.ts'

const protocol = protocolOf({
  more: `
norms:
  - { norm: adults, title: Adults, of: total, table: norms/adults.csv, as: mean-sd, unit: s, gathered: { board: oak, fill: 60 s, start_event: spoken_go },
      differs: withhold, population: Invented adults, source: made_up }
  - { norm: ratio, title: Ratio, of: side_ratio, table: norms/ratio.csv, as: mean-sd, unit: "1", gathered: {}, differs: caution, population: A, source: made_up }
change:
  - { of: total, mdc95: "10 %", population: Affected, applies: hand.affected, source: made_up }
  - { of: total, sem: 1 s, population: Other, applies: "!hand.affected", source: made_up }
`,
  files: {
    'norms/adults.csv':
      'sex,age_min,age_max,hand,n,mean,sd,provenance\nF,20,39,right,100,30,2,seen\nF,20,39,left,100,31,2,seen\n',
    'norms/ratio.csv': 'sex,age_min,age_max,hand,n,mean,sd,provenance\nany,,,any,100,1,0.1,seen\n',
  },
})

const request = (parts: Partial<CompareRequest> = {}): CompareRequest => ({
  protocol,
  score: 'total',
  value: 33,
  age: { from: 34, to: 34 },
  sex: 'F',
  hand: 'right',
  dominant: null,
  affected: null,
  told: {},
  ...parts,
})

const figures = (affected: CompareRequest['affected']) => {
  const compared = compareValue(request({ affected }))
  return 'figures' in compared ? compared.figures.map(({ population, size }) => [population, size]) : []
}

describe('a bare value is compared', () => {
  test('with the row of age, sex and hand; that nothing is known of the conditions is said', () => {
    const compared = compareValue(request())
    expect(compared).toMatchObject({
      score: 'total',
      unit: 's',
      norms: [
        {
          status: 'used',
          strata: [{ line: 2, z: 1.5, performanceZ: -1.5, definition: 'normal' }],
          caution: [{ code: 'conditions_unknown', detail: { conditions: 'board, fill', count: 2 } }],
        },
      ],
    })
  })

  test('with the figures for the error that apply to this hand', () => {
    expect(figures('right')).toEqual([['Affected', 3.3]])
    expect(figures('left')).toEqual([['Other', 1]])
    expect(figures(null)).toEqual([
      ['Affected', 3.3],
      ['Other', 1],
    ])
  })

  test('a score of no single hand takes no notice of one', () => {
    for (const hand of ['right', null] as const)
      expect(compareValue(request({ score: 'side_ratio', value: 1.1, hand }))).toMatchObject({
        norms: [{ status: 'used', strata: [{ hand: 'any', performanceZ: null }] }],
      })
  })

  test.each<[string, Partial<CompareRequest>, string]>([
    ['a score that there is not', { score: 'tottal' }, 'no_such_score'],
    ['a score without norms', { score: 'average' }, 'no_norms'],
    ['no hand', { hand: null }, 'hand_needed'],
    ['a value that is none', { value: Number.NaN }, 'value_not_a_number'],
    ['a value that the score never has', { score: 'speed', value: 900 }, 'outside_range'],
  ])('%s is refused with a reason', (_what, parts, problem) => {
    expect(compareValue(request(parts))).toMatchObject({ problem })
  })
})

test.each([
  ['34', 34],
  ['7y5m', 7],
  ['7y', 7],
  ['0y11m', 0],
  ['130', 130],
  ['131', null],
  ['7y12m', null],
  ['7.5', null],
  ['-3', null],
  ['seven', null],
  ['', null],
])('the age %j is read as %s completed years', (written, years) => {
  expect(readAge(written)).toEqual(years === null ? null : { from: years, to: years })
})
