import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { Arm, Profile } from '../../protocols/client.ts'
import { NOTHING_KNOWN } from '../../protocols/client.ts'
import { begin, type Desk, give, openDesk } from './desk.ts'
import { profileOf } from './profile.ts'

let desk: Desk
beforeAll(async () => {
  desk = await openDesk()
})
afterAll(() => desk.clinic.close())

const arm = (given: Partial<Arm>): Arm => ({ ...NOTHING_KNOWN.arms.right, status: 'unaffected', ...given })
const known = { dominantBefore: 'right', usedNow: 'right', sex: 'M' } as const
const bornOn = (date: string) => ({ birth: { known: 'date', date } }) as const
const both = { right: arm({}), left: arm({}) }

const CLIENTS: readonly [string, Partial<Profile['facts']>, string][] = [
  ['of whom nothing is known', {}, 'right'],
  ['whose birth date is unknown', { ...known, arms: both }, 'right'],
  [
    'whose right arm is absent',
    { ...known, ...bornOn('1970-01-01'), arms: { ...both, right: arm({ status: 'absent' }) } },
    'left',
  ],
  [
    'whose both hands are affected, the left less',
    {
      ...bornOn('1970-01-01'),
      sex: 'F',
      arms: { right: arm({ status: 'affected' }), left: arm({ status: 'less_affected' }) },
    },
    'left',
  ],
  [
    'who are 7 years old, out of the adults’ norms',
    { ...known, ...bornOn('2019-03-03'), arms: both },
    'right',
  ],
  [
    'of whom only an age was told',
    { ...known, birth: { known: 'told', years: 81, on: '2026-11-25' }, arms: both },
    'right',
  ],
]
const TESTS = ['nine_hole_peg', 'box_and_block', 'grip_strength'] as const

describe.each(CLIENTS)('clients %s', (_, facts, firstHand) => {
  test.each(TESTS)('are given %s to the end, with a result and a report', async (key) => {
    const protocol = { from: 'library', key } as const
    const added = await desk.client.call('clients.add', { profile: profileOf({ name: 'Ada', facts }) })
    const began = await begin(desk, protocol, added.id)
    expect(began.firstHand?.hand).toBe(firstHand)
    const { id } = await give(desk, protocol, added.id)
    const which = { store: 'records', id } as const
    const { result, shortText } = await desk.client.call('administrations.result', which)
    const present = result.trials.filter(({ practice, outcome }) => !practice && outcome === 'done')
    expect(present.length).toBeGreaterThan(0)
    expect(new Set(present.map(({ place }) => place.hand)).has('right')).toBe(
      facts.arms?.right.status !== 'absent',
    )
    for (const score of result.scores) {
      // What could not be measured has no value and says why: never a zero.
      expect(score.value === null).toBe(score.missing !== null)
      for (const { status, strata } of score.norms) {
        // Of a table that doesn't say how far people differ every row that may fit is shown, be it one or several.
        const fits =
          status === 'no_spread' ? strata.length > 0 : (status === 'used') === (strata.length === 1)
        expect([status, strata.length, fits]).toEqual([status, strata.length, true])
      }
    }
    expect(shortText).not.toBe('')
    const { pdfBase64 } = await desk.client.call('administrations.report', which)
    expect(pdfBase64.length).toBeGreaterThan(1000)
    expect(desk.defects).toEqual([])
  })
})
