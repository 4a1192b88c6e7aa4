import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import type { EventBody } from '../../protocols/runner/events.ts'
import { mainOffer } from '../../renderer/screens/administration/intents.ts'
import { ValueFields, valueBody } from '../../renderer/screens/administration/put-right/value-fields.tsx'
import { tellReadings } from '../../renderer/steps/tell.ts'
import { pickedBy, pickKeys } from '../../renderer/steps/picks.tsx'
import { Giving, madeProtocol } from '../runner/giving.ts'
import { drawn, mainLabel } from './drawn.tsx'

const clean = (markup: string): void => expect(markup).not.toMatch(/NaN|undefined|\[object/)
/** What is pressed in, of all that may be picked. */
const picked = (markup: string): readonly string[] =>
  [...markup.matchAll(/aria-pressed="true"[^>]*>(.*?)<\/button>/g)].map(([, inner = '']) =>
    inner.replaceAll(/<kbd.*?<\/kbd>/g, '').replaceAll(/<[^>]+>/g, ''),
  )

describe('A question on the stage', () => {
  const protocol = madeProtocol(`
  - { ask: felt, text: One or two?, options: { one: One point, two: Two points } }
  - { ask: years, text: Years of school?, unit: a, range: [0, 25] }
  - { ask: remark, text: Anything else?, words: 40 }
`)

  it('shows what may be answered, each with its digit, and nothing picked beforehand', () => {
    const markup = drawn(new Giving(protocol).begin().view())
    clean(markup)
    expect(markup).toContain('One or two?')
    expect(markup).toMatch(/One point.*<kbd[^>]*>1<.*Two points.*<kbd[^>]*>2</)
    expect(picked(markup)).toEqual([])
    expect(mainLabel(markup)).toBe('Answer first')
  })

  it('marks what was picked and offers to keep it by the main key', () => {
    const giving = new Giving(protocol).begin()
    giving.do(giving.body('answered', { answer: 'two', confirmed: false }))
    const markup = drawn(giving.view())
    clean(markup)
    expect(picked(markup)).toEqual(['Two points'])
    expect(mainOffer(giving.view())).toBe('ask.kept')
    expect(mainLabel(markup)).toBe('Keep and go on')
  })

  it('tells an answer that was given, and what it should have been, in the words of the file', () => {
    const giving = new Giving(protocol).begin()
    giving.do(giving.body('answered', { answer: 'two', confirmed: false })).press('kept')
    const { trials } = giving.view()
    expect(trials[0] && tellReadings(trials[0])).toMatchObject([{ words: 'Two points' }])
    const which = `${trials[0]?.id} answer`
    const fields = renderToStaticMarkup(
      <ValueFields trials={trials} value={{ which, typed: '', isDoubted: false }} onChange={() => {}} />,
    )
    expect(fields).toMatch(/One point.*Two points/)
    const body = valueBody({ which, typed: 'one', isDoubted: false }, trials, 'Misheard.')
    if ('problem' in body) throw new Error('It is no body.')
    expect(giving.take(body as EventBody)).toBeNull()
    expect(drawn(giving.view())).toContain('One point')
    expect(valueBody({ which, typed: '', isDoubted: false }, trials, 'Misheard.')).toHaveProperty('problem')
  })

  it('asks for a number with its unit, and for words', () => {
    const giving = new Giving(protocol).begin()
    const say = (answer: string | number) =>
      giving.do(giving.body('answered', { answer, confirmed: false })).press('kept')
    say('one')
    clean(drawn(giving.view()))
    expect(drawn(giving.view())).toContain('inputMode="decimal"')
    giving.do(giving.body('answered', { answer: 9, confirmed: false }))
    expect(drawn(giving.view())).toContain('9 years')
    giving.press('kept')
    clean(drawn(giving.view()))
    say('left glove')
    expect(drawn(giving.view())).toContain('left glove')
  })
})

describe('The keys of what may be picked', () => {
  it('are digits in order, then free letters', () => {
    const ids = ['a1', 'a2', 'a3', 'a4', 'a5', 'a6', 'a7', 'a8', 'a9', 'hook', 'hold']
    const keys = pickKeys(ids, ['h'])
    expect(Object.values(keys)).toEqual(['1', '2', '3', '4', '5', '6', '7', '8', '9', 'o', 'l'])
  })

  it('are the grades themselves where grades are picked', () => {
    expect(pickKeys(['0', '1', '2'], [])).toEqual({ 0: '0', 1: '1', 2: '2' })
  })

  it('never take a key twice, and are left to the pointer where none is free', () => {
    const ids = Array.from({ length: 40 }, (_, index) => `option_${index}`)
    const keys = Object.values(pickKeys(ids, ['a', 'b'])).filter((key) => key !== null)
    expect(new Set(keys).size).toBe(keys.length)
    expect(keys).not.toContain('a')
    expect(keys.length).toBe(9 + 24)
  })

  it('are found by the key’s place where digits need Shift, and on the number pad', () => {
    expect(pickedBy({ key: 'é', code: 'Digit2' })).toBe('2')
    expect(pickedBy({ key: '2', code: 'Numpad2' })).toBe('2')
    expect(pickedBy({ key: 'H', code: 'KeyH' })).toBe('h')
  })
})

describe('A grade on the stage', () => {
  const protocol = madeProtocol(`
  - { timed: carry, start: { said: go }, stop: { seen: home }, limit: 60 s }
  - rated: quality
    of: carry
    scale: { 0: None, 1: Part, 2: Slow, 3: Normal }
    highest: "last(carry.time) < 5 ? 3 : 2"
`)

  it('shows each grade with its words and its own digit, and which take a reason', () => {
    const markup = drawn(new Giving(protocol).begin().time(7).view())
    clean(markup)
    expect(markup).toMatch(/>0<.*None.*<kbd[^>]*>0<.*>3<.*Normal.*takes a reason.*<kbd[^>]*>3</)
    expect(markup).toContain('What was measured allows 2 at most.')
    expect(picked(markup)).toEqual([])
    expect(mainLabel(markup)).toBe('Grade first')
  })

  it('says nothing of a highest grade where none is above it', () => {
    expect(drawn(new Giving(protocol).begin().time(4).view())).not.toContain('at most')
  })

  it('marks the grade that was given, keeps it by the main key and tells it among the trials', () => {
    const giving = new Giving(protocol).begin().time(4)
    giving.do(giving.body('graded', { grade: 3, reason: null }))
    expect(picked(drawn(giving.view()))).toEqual(['3Normal'])
    expect(mainLabel(drawn(giving.view()))).toBe('Keep and go on')
    giving.press('kept')
    clean(drawn(giving.view()))
  })
})
