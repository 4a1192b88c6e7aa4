import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { checkProfile, isCalendarDate } from '../../main/calls/profile-check.ts'
import { Refused } from '../../main/contract/procedure.ts'
import type { Birth, Profile } from '../../protocols/client.ts'
import { profileOf } from './profile.ts'

const TODAY = '2026-11-25'
const refusal = (profile: Profile) => {
  try {
    checkProfile(profile, TODAY)
  } catch (error) {
    if (error instanceof Refused) return error.fault
    throw error
  }
  return null
}
const until = (date: string) => {
  const profile = profileOf({ name: 'Ada' })
  const restrictions = [{ what: 'No load', setBy: '', until: date }]
  const arms = { ...profile.facts.arms, right: { ...profile.facts.arms.right, restrictions } }
  return refusal({ ...profile, facts: { ...profile.facts, arms } })
}
const bornAs = (birth: Birth) => refusal(profileOf({ name: 'Ada', facts: { birth } }))

describe('a profile says only what can be', () => {
  test('a name or a clinic number is enough, and one of them is needed', () => {
    expect(refusal(profileOf({ name: 'Ada' }))).toBeNull()
    expect(refusal(profileOf({ number: '17' }))).toBeNull()
    expect(refusal(profileOf({}))?.code).toBe('profile_empty')
    expect(refusal(profileOf({ name: '  ', number: '\t' }))?.code).toBe('profile_empty')
  })

  test('nobody is born in the future, as far as the date is known', () => {
    expect(bornAs({ known: 'date', date: '2026-11-26' })).toEqual({
      code: 'birth_in_future',
      detail: { given: '2026-11-26' },
    })
    expect(bornAs({ known: 'month', year: 2026, month: 12 })?.code).toBe('birth_in_future')
    expect(bornAs({ known: 'year', year: 2027 })?.code).toBe('birth_in_future')
    expect(bornAs({ known: 'date', date: TODAY })).toBeNull()
    expect(bornAs({ known: 'month', year: 2026, month: 11 })).toBeNull()
    expect(bornAs({ known: 'year', year: 2026 })).toBeNull()
    expect(bornAs({ known: 'no' })).toBeNull()
  })

  test('a birth date that no calendar has, or that is too long ago, is refused', () => {
    expect(bornAs({ known: 'date', date: '1971-02-29' })).toEqual({
      code: 'date_impossible',
      detail: { field: 'birth', given: '1971-02-29' },
    })
    expect(bornAs({ known: 'date', date: '1972-02-29' })).toBeNull()
    expect(bornAs({ known: 'date', date: '1849-12-31' })?.code).toBe('birth_too_early')
  })

  test('an age was told, and agreement given, at the latest today', () => {
    expect(bornAs({ known: 'told', years: 81, on: TODAY })).toBeNull()
    expect(bornAs({ known: 'told', years: 81, on: '2026-12-01' })?.code).toBe('date_in_future')
    const agreement = { given: 'yes', by: 'herself', on: '2027-01-01' } as const
    expect(refusal({ ...profileOf({ name: 'Ada' }), agreement })?.code).toBe('date_in_future')
  })

  test('a restriction may end in the future, but on a day that there is', () => {
    expect(until('2027-06-30')).toBeNull()
    expect(until('2027-06-31')?.code).toBe('date_impossible')
  })
})

test('every day that a calendar has is one, and the day after the last of a month is none', () => {
  const days = fc.date({ min: new Date('1850-01-01'), max: new Date('2199-12-31'), noInvalidDate: true })
  fc.assert(
    fc.property(days, (day) => {
      const text = day.toISOString().slice(0, 10)
      const last = new Date(Date.UTC(day.getUTCFullYear(), day.getUTCMonth() + 1, 0)).getUTCDate()
      expect(isCalendarDate(text)).toBe(true)
      expect(isCalendarDate(`${text.slice(0, 8)}${last + 1}`)).toBe(false)
    }),
  )
})
