import { beforeEach, describe, expect, test } from 'vitest'
import { Giving, madeProtocol } from '../runner/giving.ts'

const PROTOCOL = madeProtocol(`
  - repeat: round
    times: 2
    steps:
      - for-each: hand
        in: hands
        order: right-first
        steps:
          - { rest: breath, since: squeeze, least: 60 s }
          - { measured: squeeze, unit: kgf, range: [0, 100] }
`)

let giving: Giving
beforeEach(() => {
  giving = new Giving(PROTOCOL).begin()
})

const began = () => giving.take(giving.body('began', { at: giving.now, clock: giving.clock }))
const over = () => giving.take(giving.body('over', { at: giving.now, clock: giving.clock }))

describe('a rest', () => {
  test('is passed over where there is nothing to rest from', () => {
    expect(giving.where()).toBe('squeeze at 1, right: waiting')
    giving.measure(30)
    expect(giving.where()).toBe('squeeze at 1, left: waiting')
  })

  test('counts from the last trial of the same hand', () => {
    giving.measure(30)
    const rightEnded = giving.now
    giving.now += 20_000
    giving.measure(28)
    expect(giving.where()).toBe('breath at 2, right: waiting')
    began()
    expect(giving.view().step?.face).toEqual({ least: 60, from: { at: rightEnded, clock: 'page-1' } })
    giving.now = rightEnded + 59_999
    expect(over()).toBe('rest_not_over')
    giving.now = rightEnded + 60_000
    expect(over()).toBeNull()
    expect(giving.where()).toBe('squeeze at 2, right: waiting')
  })

  test('cut short takes a reason and is a deviation', () => {
    giving.measure(30).measure(28)
    expect(giving.take(giving.body('cut', { reason: '' }))).toBe('malformed')
    giving.do(giving.body('cut', { reason: 'Client in a hurry' }))
    expect(giving.where()).toBe('squeeze at 2, right: waiting')
    expect(giving.view().deviations).toMatchObject([
      { code: 'rest_cut', what: 'breath', reason: 'Client in a hurry', norms: 'caution', by: 'Ida' },
    ])
  })

  test('cut by a restart starts anew, on the new clock', () => {
    giving.measure(30).measure(28)
    began()
    giving.do({ kind: 'interrupted', cause: 'restart' }).do({ kind: 'confirmed', what: 'resume' })
    expect(giving.where()).toBe('breath at 2, right: waiting')
    giving.clock = 'page-2'
    giving.now = 700
    began()
    expect(giving.view().step?.face).toEqual({ least: 60, from: { at: 700, clock: 'page-2' } })
  })
})
