import { beforeEach, describe, expect, test } from 'vitest'
import { Giving, madeProtocol } from '../runner/giving.ts'
import { resumed, scoreOf } from './resumed.ts'

const PROTOCOL = madeProtocol(
  `
  - repeat: touch
    times: 3
    steps:
      - { ask: felt, text: One or two?, voids: 1, options: { one: One point, two: Two points } }
  - { ask: years, text: How many years of school?, unit: a, range: [0, 25], decimals: 0 }
  - { ask: remark, text: Anything else?, words: 12 }
`,
  `
scores:
  - score: right
    title: Twos
    value: count(felt.rows.filter(r, r.answer == 'two'))
    unit: "{count}"
    better: higher
    decimals: 0
  - { score: schooling, title: School, value: last(years.answer), unit: a, better: none, decimals: 0 }
`,
)

let giving: Giving
beforeEach(() => {
  giving = new Giving(PROTOCOL).begin()
})

const answer = (value: unknown, confirmed = false) =>
  giving.take(giving.body('answered', { answer: value, confirmed }))
const pick = (id: string) => {
  expect(answer(id)).toBeNull()
  giving.press('kept')
}

describe('a question with options', () => {
  test('keeps the id of the option, told in the words of the file', () => {
    expect(giving.view().step?.face).toMatchObject({
      options: [
        { id: 'one', text: 'One point' },
        { id: 'two', text: 'Two points' },
      ],
      answer: null,
    })
    pick('two')
    expect(giving.rows('felt')).toEqual(['1 done answer two'])
    expect(giving.where()).toBe('felt at 2: waiting')
  })

  test('can be answered anew before it is kept, and by nothing else than an option', () => {
    expect(answer('three')).toBe('no_such_answer')
    expect(answer(2)).toBe('no_such_answer')
    expect(answer('toString')).toBe('no_such_answer')
    answer('one')
    expect(giving.where()).toBe('felt at 1: answered')
    pick('two')
    expect(giving.rows('felt')).toEqual(['1 done answer two'])
  })

  test('is not kept before it is answered', () => {
    expect(giving.tryPress('kept')).toBe('not_now')
  })

  test('is void before and after the answer, and made good as often as allowed', () => {
    answer('one')
    giving.press('voided')
    expect(giving.view().trials).toMatchObject([{ status: 'void', attempt: 1, void: { valueSeen: true } }])
    expect(giving.where()).toBe('felt at 1: waiting')
    giving.press('voided')
    expect(giving.rows('felt')).toEqual(['1 not_given'])
    expect(giving.where()).toBe('felt at 2: waiting')
  })

  test('undo takes the answer back, and then the keeping of the one before', () => {
    pick('two')
    answer('one')
    giving.do({ kind: 'undone' })
    expect(giving.where()).toBe('felt at 2: waiting')
    giving.do({ kind: 'undone' })
    expect(giving.where()).toBe('felt at 1: answered')
    expect(giving.view().step?.face).toMatchObject({ answer: 'two' })
  })

  test('comes back as it was after a restart: an answer that waits to be kept stays', () => {
    answer('one')
    expect(resumed(giving).where()).toBe('felt at 1: answered')
  })

  test.each(['unable', 'refused', 'not_allowed', 'absent', 'not_given'] as const)(
    'closed as %s it has no answer, and the next one comes',
    (outcome) => {
      giving.do({ kind: 'closed', what: 'trial', place: { touch: 1 }, outcome, reason: '' })
      expect(giving.rows('felt')).toEqual([`1 ${outcome}`])
      expect(giving.where()).toBe('felt at 2: waiting')
    },
  )

  test('a correction is an option too', () => {
    pick('two')
    const correct = (value: string | number) => {
      const trial = giving.view().trials[0]?.id ?? ''
      return giving.take({ kind: 'corrected', trial, column: 'answer', value, reason: 'Misheard.' })
    }
    expect(correct('three')).toBe('no_such_answer')
    expect(correct(1)).toBe('wrong_type')
    expect(correct('one')).toBeNull()
    expect(giving.rows('felt')).toEqual(['1 done answer one'])
    const { options } = giving.view().trials[0]?.readings.answer ?? {}
    expect(options).toEqual({ one: 'One point', two: 'Two points' })
  })
})

describe('a question answered with a number', () => {
  beforeEach(() => {
    for (const id of ['two', 'one', 'two']) pick(id)
  })

  test('has its unit, and can be read by scores beside the options', () => {
    expect(answer(9)).toBeNull()
    giving.press('kept')
    expect(scoreOf(giving, 'right')).toBe(2)
    expect(scoreOf(giving, 'schooling')).toBe(9)
  })

  test('STD-ADM-12 is asked for again outside of what is plausible', () => {
    expect(answer(40)).toBe('out_of_range')
    expect(answer(9.5)).toBe('too_many_decimals')
    expect(answer('nine')).toBe('wrong_type')
    expect(answer(40, true)).toBeNull()
    giving.press('kept')
    expect(giving.view().trials.at(-1)?.readings.answer).toMatchObject({ confirmed: true, unit: 'a' })
  })

  test('and one in words is kept as it was typed, up to its length', () => {
    answer(9)
    giving.press('kept')
    expect(answer('  ')).toBe('malformed')
    expect(answer('much too long for it')).toBe('too_long')
    pick('left glove')
    expect(giving.rows('remark')).toEqual(['done answer left glove'])
  })
})
