import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Profile, profile } from '../../protocols/client.ts'
import { draftFrom, readProfile } from '../../renderer/screens/profile/draft.ts'

const TODAY = '2026-11-25'
const empty = draftFrom(null, TODAY)

const problemsOf = (read: ReturnType<typeof readProfile>) => ('problems' in read ? read.problems : {})
const profileOf = (read: ReturnType<typeof readProfile>): Profile => {
  if ('problems' in read) throw new Error(JSON.stringify(read.problems))
  return read.profile
}

describe('A profile needs only a name or a number', () => {
  it('refuses neither of them, in place', () => {
    expect(Object.keys(problemsOf(readProfile(empty, TODAY)))).toEqual(['name'])
  })

  it.each(['name', 'number'] as const)('takes a %s alone and guesses nothing', (field) => {
    const read = profileOf(readProfile({ ...empty, [field]: 'A 17' }, TODAY))
    expect(read.facts).toMatchObject({
      birth: { known: 'no' },
      sex: 'unknown',
      dominantBefore: 'unknown',
      usedNow: 'unknown',
      arms: { right: { status: 'unknown' }, left: { status: 'unknown' } },
    })
    expect(read.agreement.given).toBe('unknown')
  })
})

describe('An uncertain birth stays as uncertain as it is', () => {
  const named = { ...empty, name: 'Ida Brekke' }

  it('keeps a year, a month, an age told on a day', () => {
    const born = (day: string, month: string, year: string) =>
      profileOf(readProfile({ ...named, birth: { ...named.birth, date: { day, month, year } } }, TODAY)).facts
        .birth
    expect(born('', '', '1951')).toEqual({ known: 'year', year: 1951 })
    expect(born('', '3', '1951')).toEqual({ known: 'month', year: 1951, month: 3 })
    const told = readProfile({ ...named, birth: { ...named.birth, known: 'told', years: '72' } }, TODAY)
    expect(profileOf(told).facts.birth).toEqual({ known: 'told', years: 72, on: TODAY })
  })

  it('a birth date in the future is refused in place, and nothing else is', () => {
    const date = { day: '1', month: '1', year: '2031' }
    const read = readProfile({ ...named, birth: { ...named.birth, date } }, TODAY)
    expect(Object.keys(problemsOf(read))).toEqual(['birth'])
  })

  it('text where the told age belongs is refused in place', () => {
    const read = readProfile({ ...named, birth: { ...named.birth, known: 'told', years: 'old' } }, TODAY)
    expect(problemsOf(read).years).toMatch(/number/i)
  })
})

const text = fc.string({ maxLength: 20 }).map((each) => each.trim())
const date = fc
  .date({ min: new Date('1900-01-01'), max: new Date(TODAY), noInvalidDate: true })
  .map((each) => each.toISOString().slice(0, 10))
const hand = fc.constantFrom('right', 'left', 'mixed', 'not_settled', 'unknown')
const arm = fc.record({
  status: fc.constantFrom('unaffected', 'affected', 'less_affected', 'absent', 'unknown'),
  condition: text,
  since: text,
  absentPart: text,
  restrictions: fc.array(fc.record({ what: text.filter(Boolean), setBy: text, until: fc.option(date) }), {
    maxLength: 2,
  }),
})
const profiles = fc.record({
  name: text.filter(Boolean),
  number: text,
  secondIdentifier: text,
  facts: fc.record({
    birth: fc.oneof(
      fc.record({ known: fc.constant('date'), date }),
      fc.record({
        known: fc.constant('month'),
        year: fc.integer({ min: 1900, max: 2025 }),
        month: fc.integer({ min: 1, max: 12 }),
      }),
      fc.record({ known: fc.constant('year'), year: fc.integer({ min: 1900, max: 2025 }) }),
      fc.record({ known: fc.constant('told'), years: fc.integer({ min: 0, max: 130 }), on: date }),
      fc.record({ known: fc.constant('no') }),
    ),
    sex: fc.constantFrom('F', 'M', 'unknown'),
    dominantBefore: hand,
    usedNow: hand,
    arms: fc.record({ right: arm, left: arm }),
    schoolingYears: fc.option(fc.integer({ min: 0, max: 40 })),
  }),
  language: text,
  interpreter: text,
  sight: text,
  hearing: text,
  speech: text,
  neglect: text,
  agreement: fc.record({
    given: fc.constantFrom('yes', 'no', 'unknown'),
    by: text,
    on: fc.option(date),
  }),
})

describe('The profile form loses nothing', () => {
  it('opening a profile and saving it unchanged gives the same profile', () => {
    fc.assert(
      fc.property(profiles, (raw) => {
        const kept = profile.parse(raw)
        expect(profileOf(readProfile(draftFrom(kept, TODAY), TODAY))).toEqual(kept)
      }),
    )
  })
})
