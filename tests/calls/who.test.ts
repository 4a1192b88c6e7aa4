/** What a result says of clients whom tables don't fit, or of whom not enough is known: never a guess. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { ClientFacts } from '../../protocols/client.ts'
import { NOTHING_KNOWN } from '../../protocols/client.ts'
import type { NormComparison, Result } from '../../protocols/scoring/result.ts'
import { begin, type Desk, isFinished, openDesk, PEGS, until } from './desk.ts'
import { printed } from './printed.ts'
import { profileOf } from './profile.ts'

let desk: Desk
beforeAll(async () => {
  desk = await openDesk()
})
afterAll(() => desk.clinic.close())

const unaffected = { ...NOTHING_KNOWN.arms.right, status: 'unaffected' } as const
const absent = { ...NOTHING_KNOWN.arms.right, status: 'absent' } as const
const WOMAN_OF_41 = {
  birth: { known: 'date', date: '1985-06-15' },
  sex: 'F',
  dominantBefore: 'right',
  usedNow: 'right',
  arms: { right: unaffected, left: unaffected },
} as const

interface Told {
  readonly firstHand: string | undefined
  readonly result: Result
  readonly paper: string
}

/** Gives the nine-hole peg test to somebody of whom that much is known. */
async function give(facts: Partial<ClientFacts>): Promise<Told> {
  const profile = profileOf({ name: 'Ada Marsh', facts: { ...WOMAN_OF_41, ...facts } })
  const { id: client } = await desk.client.call('clients.add', { profile })
  const begun = await begin(desk, PEGS, client)
  const { id } = await until(desk, begun, isFinished)
  const { result } = await desk.client.call('administrations.result', { store: 'records', id })
  return { firstHand: begun.firstHand?.hand, result, paper: await printed(desk, id) }
}

const scoreOf = ({ scores }: Result, hand: string) =>
  scores.find(({ score, place }) => score === 'time' && place['hand'] === hand)
const adults = (result: Result, hand = 'right'): NormComparison | undefined =>
  scoreOf(result, hand)?.norms.find(({ norm }) => norm === 'adults_1985')

describe('tables are for whom they were gathered', () => {
  test('a client of 7 years is outside the adults’ tables, which is said, and nothing is made up', async () => {
    const { result, paper } = await give({ birth: { known: 'date', date: '2019-03-03' } })
    expect(result.age).toEqual({ from: 7, to: 7 })
    expect(adults(result)).toMatchObject({ status: 'out_of_range', strata: [] })
    expect(paper).toContain('Outside the ages of this table: nothing is made up for it.')
  })

  test('with the sex unknown the rows for both stand there, and none is chosen', async () => {
    const { result, paper } = await give({ sex: 'unknown' })
    const found = adults(result)
    expect([found?.status, found?.strata.map(({ sex }) => sex).sort()]).toEqual(['several', ['F', 'M']])
    expect(paper).toContain('The sex is not known: the rows for both are shown.')
    for (const words of ['women, 40 to 44 years, right hand', 'men, 40 to 44 years, right hand'])
      expect(paper).toContain(words)
  })

  test('with the birth date unknown nothing is compared, and why is said', async () => {
    const { result, paper } = await give({ birth: { known: 'no' } })
    expect(result.age).toBeNull()
    for (const { status, strata } of scoreOf(result, 'right')?.norms ?? [])
      expect([
        status === 'used',
        strata.some(({ ageMin, ageMax }) => ageMin === null && ageMax === null),
      ]).toEqual([false, false])
    expect(paper).toContain('The age is not known.')
  })

  test('a left-hander begins with the left hand, and each hand is held against its own column', async () => {
    const { firstHand, result } = await give({ dominantBefore: 'left', usedNow: 'left' })
    expect(firstHand).toBe('left')
    const counted = result.trials.filter(({ practice }) => !practice)
    expect(counted.map(({ place }) => place['hand'])).toEqual(['left', 'right'])
    for (const hand of ['left', 'right'])
      expect(adults(result, hand)?.strata).toMatchObject([{ sex: 'F', hand }])
  })

  test('an absent right arm is left out as absent: no value, no comparison, no zero', async () => {
    const { firstHand, result, paper } = await give({ arms: { right: absent, left: unaffected } })
    expect(firstHand).toBe('left')
    expect(scoreOf(result, 'right')).toMatchObject({ value: null, missing: { code: 'absent' } })
    expect(scoreOf(result, 'left')?.otherHand).toMatchObject({
      difference: null,
      withheld: { code: 'other_absent' },
    })
    expect(paper).toContain('part absent')
    expect(paper).not.toMatch(/right hand 0/)
  })
})
