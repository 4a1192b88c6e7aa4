import { beforeEach, describe, expect, test } from 'vitest'
import { Giving, madeProtocol } from '../runner/giving.ts'

const PROTOCOL = madeProtocol(`
  - { measured: squeeze, unit: kgf, range: [0, 100], decimals: 1, voids: 1, counts-as: { unable: 0 kgf } }
  - { measured: second, unit: kgf, range: [0, 100] }
`)

let giving: Giving
beforeEach(() => {
  giving = new Giving(PROTOCOL).begin()
})

const enter = (value: unknown, confirmed = false) => giving.take(giving.body('entered', { value, confirmed }))

describe('a reading typed from an instrument', () => {
  test('stands once it is kept, with the unit of the step', () => {
    giving.measure(32.5)
    expect(giving.rows('squeeze')).toEqual(['done value 32.5'])
    expect(giving.view().trials[0]?.readings.value).toMatchObject({ unit: 'kgf', typed: true })
    expect(giving.where()).toBe('second: waiting')
  })

  test('can be typed again before it is kept', () => {
    enter(23.5)
    enter(32.5)
    giving.press('kept')
    expect(giving.rows('squeeze')).toEqual(['done value 32.5'])
    expect(giving.view().trials.length).toBe(1)
  })

  test('STD-ADM-12 a grip of 900 kgf is asked for again and only then taken', () => {
    expect(enter(900)).toBe('out_of_range')
    expect(giving.where()).toBe('squeeze: waiting')
    expect(enter(900, true)).toBeNull()
    expect(giving.where()).toBe('squeeze: entered')
    giving.press('kept')
    expect(giving.view().trials[0]?.readings.value).toMatchObject({ value: 900, confirmed: true })
  })

  test('what is plausible needs no confirming, and is not marked as if it had', () => {
    enter(32.5, true)
    giving.press('kept')
    expect(giving.view().trials[0]?.readings.value).toMatchObject({ value: 32.5, confirmed: false })
  })

  test('text, and more decimals than the instrument has, are refused', () => {
    expect(enter('thirty')).toBe('malformed')
    expect(enter(32.55)).toBe('too_many_decimals')
    expect(enter(1e-7)).toBe('too_many_decimals')
  })

  test('a try that went wrong is void before any value is known, and made good as often as allowed', () => {
    giving.press('voided')
    expect(giving.view().trials[0]).toMatchObject({ status: 'void', attempt: 1, void: { valueSeen: false } })
    expect(giving.view().step?.face).toMatchObject({ attempt: 2, voidsLeft: 0 })
    giving.press('voided')
    expect(giving.rows('squeeze')).toEqual(['not_given'])
    expect(giving.where()).toBe('second: waiting')
  })

  test('a trial closed as tried, unable counts as what the file says', () => {
    giving.do({ kind: 'closed', what: 'trial', place: {}, outcome: 'unable', reason: 'No grip at all.' })
    expect(giving.rows('squeeze')).toEqual(['unable value 0'])
    expect(giving.view().trials[0]?.remark).toBe('No grip at all.')
  })
})
