import { describe, expect, test } from 'vitest'
import { facts, Giving, madeProtocol } from '../runner/giving.ts'
import { rehearsed } from './rehearsed.ts'

const PROTOCOL = madeProtocol(
  `
  - for-each: hand
    in: hands
    order: dominant-first
    steps:
      - choose: warm_up
        cases:
          - when: hand.turn == 1
            steps:
              - { timed: try_out, practice: true, start: { said: go }, stop: { seen: Home. } }
        otherwise: []
      - { measured: force, unit: kgf, range: [0, 90] }
      - choose: how
        cases:
          - when: last(force.value) > 50
            steps:
              - { measured: strong, unit: kgf, range: [0, 90] }
          - when: last(force.value) > 20
            steps:
              - { position: turned }
              - { measured: middling, unit: kgf, range: [0, 90] }
        otherwise:
          - { measured: weak, unit: kgf, range: [0, 90] }
`,
)

const giving = () => new Giving(PROTOCOL).begin(facts({ dominantBefore: 'right' }))
const told = (one: Giving) => one.view().rules.map(({ rule, did }) => `${rule} ${did}`)

describe('a choice', () => {
  test('gives the case whose condition holds, and leaves the others out without a row', () => {
    const one = giving()
    expect(one.where()).toBe('try_out at right: waiting')
    one.time(4).measure(60)
    expect(one.where()).toBe('strong at right: waiting')
    one.measure(61)
    expect(one.where()).toBe('force at left: waiting')
    expect(one.view().trials.map(({ step }) => step)).toEqual(['try_out', 'force', 'strong'])
  })

  test('takes the first case that holds, then what stands behind the choice', () => {
    const one = giving().time(4).measure(30)
    expect(one.where()).toBe('turned at right: waiting')
    one.press('set').measure(31)
    expect(one.where()).toBe('force at left: waiting')
  })

  test('gives otherwise where no condition holds', () => {
    const one = giving().time(4).measure(10)
    expect(one.where()).toBe('weak at right: waiting')
  })

  test('with a condition that has no answer gives nothing, and says so', () => {
    const one = giving().time(4)
    one.do({
      kind: 'closed',
      what: 'trial',
      place: { hand: 'right' },
      outcome: 'refused',
      reason: 'Tired',
    })
    expect(one.where()).toBe('force at left: waiting')
    expect(told(one)).toEqual(['how nothing'])
  })

  test('is no loop: it has no pass on the screen and leaves no trace in a place', () => {
    const one = giving().time(4).measure(60)
    const { step } = one.view()
    expect(step?.passes.map(({ loop }) => loop)).toEqual(['hand'])
    expect(step?.place).toEqual({ hand: 'right' })
  })

  test('is undone with the act that led to it, and judged anew', () => {
    const one = giving().time(4).measure(60).do({ kind: 'undone' })
    expect(one.where()).toBe('force at right: entered')
    one.do(one.body('entered', { value: 10, confirmed: false })).press('kept')
    expect(one.where()).toBe('weak at right: waiting')
  })

  test('is named when a correction would have led elsewhere; what was given stays', () => {
    const one = giving().time(4).measure(60).measure(61)
    const trial = one.view().trials.find(({ step }) => step === 'force')?.id ?? ''
    one.do({ kind: 'corrected', trial, column: 'value', value: 10, reason: 'Misread' })
    expect(one.view().wouldDiffer).toEqual([{ rule: 'how', place: { hand: 'right' } }])
    expect(one.where()).toBe('force at left: waiting')
  })

  test('cut off before it is reached, it owes what it would have given', () => {
    const one = giving().time(4)
    one.do({ kind: 'closed', what: 'hand', place: { hand: 'right' }, outcome: 'unable', reason: '' })
    expect(one.rows('force')).toEqual(['right unable'])
    expect(one.rows('strong')).toEqual([])
  })

  test('is rehearsed to the end', () => {
    expect(rehearsed(PROTOCOL, 7).end).toBe('finished')
  })
})
