import { describe, expect, test } from 'vitest'
import { facts, Giving, madeProtocol } from '../runner/giving.ts'

const COUNTED = madeProtocol(
  `
  - { measured: wished, unit: "{count}", range: [0, 5] }
  - repeat: round
    times: { from: last(wished.value) }
    steps: [{ measured: grip, unit: kgf, range: [0, 90] }]
  - { position: after }
`,
  `
scores:
  - { score: best, value: max(grip.value), unit: kgf, better: higher, decimals: 1 }
`,
)

const begun = () => new Giving(COUNTED).begin(facts({ dominantBefore: 'right' }))

describe('a repeat whose number is worked out', () => {
  test('has so many passes, none of them where the number is none, and then has nothing to say', () => {
    const giving = begun().measure(2).measure(10).measure(12)
    expect(giving.where()).toBe('after: waiting')
    const none = begun().measure(0)
    expect(none.where()).toBe('after: waiting')
    expect([giving.view().rules, none.view().rules]).toEqual([[], []])
  })

  test('gives nothing where the number has no value, and says so', () => {
    const giving = begun()
    const place = giving.view().step?.place ?? {}
    giving.do({ kind: 'closed', what: 'wished', place, outcome: 'refused', reason: '' })
    expect(giving.where()).toBe('after: waiting')
    expect(giving.view().rules).toEqual([{ rule: 'round', place: {}, did: 'nothing', text: '' }])
  })
})
