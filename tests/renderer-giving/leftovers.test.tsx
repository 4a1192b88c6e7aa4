import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { leftToPick, orderBody, Picks } from '../../renderer/screens/administration/choose-order.tsx'
import { Missing } from '../../renderer/screens/administration/missing.tsx'
import { NO_VALUE, valueBody } from '../../renderer/screens/administration/put-right/value-fields.tsx'
import { tellReadings } from '../../renderer/steps/tell.ts'
import { Giving, madeProtocol } from '../runner/giving.ts'

const words = (markup: string): string => markup.replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ')

const choosingOf = (steps: string, rest?: string) => {
  const giving = new Giving(madeProtocol(steps, rest)).begin()
  const { choosing } = giving.view()
  if (choosing === null) throw new Error('Nothing is to be chosen')
  return { giving, choosing }
}

describe('An order that the protocol leaves to the examiner', () => {
  const hands = `
  - for-each: hand
    in: hands
    order: chosen
    steps:
      - { measured: squeeze, unit: kgf, range: [0, 100] }
`

  it('of the hands is chosen by one key: the other one follows', () => {
    const { giving, choosing } = choosingOf(hands)
    const markup = renderToStaticMarkup(<Picks choosing={choosing} picked={[]} onPick={() => {}} />)
    expect(words(markup)).toMatch(/Right hand 1 .*Left hand 2/)
    expect(orderBody(choosing, [])).toBeNull()
    const body = orderBody(choosing, ['left'])
    if (body === null) throw new Error('One pick decides between two')
    expect(giving.take(body)).toBeNull()
    expect(giving.view()).toMatchObject({ choosing: null, firstHand: { hand: 'left', rule: 'chosen' } })
  })

  it('of a longer list is chosen one after the other, by the words of its items', () => {
    const { giving, choosing } = choosingOf(
      `
  - for-each: part
    in: parts
    order: chosen
    steps:
      - { measured: grade, unit: "{score}", range: [0, 3] }
`,
      'lists: { parts: [{ id: near, title: Near half }, { id: far_off }, { id: middle }] }',
    )
    expect(orderBody(choosing, ['far_off'])).toBeNull()
    expect(leftToPick(choosing, ['far_off'])).toEqual(['near', 'middle'])
    const markup = renderToStaticMarkup(<Picks choosing={choosing} picked={['far_off']} onPick={() => {}} />)
    expect(words(markup)).toMatch(/far off .*Near half 1 .*middle 2/)
    const body = orderBody(choosing, ['far_off', 'middle'])
    expect(body).toMatchObject({ items: ['far_off', 'middle', 'near'], rule: 'chosen' })
    if (body !== null) giving.do(body)
    expect(giving.view().step?.place).toEqual({ part: 'far_off' })
  })
})

it('What a correction shows to be missing is offered with its rule and hand, and nothing where nothing is', () => {
  const missing = [{ rule: 'all_parts', place: { hand: 'right', part: 'near' } }]
  const told = words(renderToStaticMarkup(<Missing missing={missing} onTakeUp={() => {}} />))
  expect(told).toContain('After a correction something is missing.')
  expect(told).toContain('Give what is missing (all parts · Right hand)')
  expect(renderToStaticMarkup(<Missing missing={[]} onTakeUp={() => {}} />)).toBe('')
})

describe('STD-ADM-12 a value outside the plausible range', () => {
  const steps = '  - { measured: squeeze, unit: kgf, range: [0, 100] }'

  it('says that it was confirmed, wherever the trial is shown', () => {
    const giving = new Giving(madeProtocol(steps)).begin()
    giving.do(giving.body('entered', { value: 900, confirmed: true })).press('kept')
    const [trial] = giving.view().trials
    expect(trial && tellReadings(trial).map(({ words: told }) => told)).toEqual([
      expect.stringMatching(/^900 .*confirmed outside the plausible range/),
    ])
  })

  it('is asked for again when a value is put right, and confirmed by saving it once more', () => {
    const giving = new Giving(madeProtocol(steps)).begin().measure(30)
    const { trials } = giving.view()
    const draft = { ...NO_VALUE, which: `${trials[0]?.id} value`, typed: '300' }
    const save = (isDoubted: boolean) =>
      giving.take(valueBody({ ...draft, isDoubted }, trials, 'Misread') as never)
    expect(save(false)).toBe('out_of_range')
    expect(save(true)).toBeNull()
  })
})
