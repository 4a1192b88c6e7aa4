import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Client } from '../../main/contract/client.ts'
import { type Profile, profile } from '../../protocols/client.ts'
import { findAlike } from '../../renderer/screens/profile/alike.tsx'
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

describe('What can’t be is refused in place', () => {
  it('of two arms only one can be the less affected', () => {
    const less = { ...empty.arms.right, status: 'less_affected' as const }
    const read = readProfile({ ...empty, name: 'Ida Brekke', arms: { right: less, left: less } }, TODAY)
    expect(Object.keys(problemsOf(read))).toEqual(['arms'])
  })

  it('a restriction says what is restricted', () => {
    const bare = { key: 'a', what: ' ', setBy: '', until: { day: '', month: '', year: '' } }
    const right = { ...empty.arms.right, restrictions: [bare] }
    const read = readProfile({ ...empty, name: 'Ida Brekke', arms: { ...empty.arms, right } }, TODAY)
    expect(Object.keys(problemsOf(read))).toEqual(['arms.right.0.what'])
  })
})

const line = (name: string, number: string) => ({
  id: `0198c0de-0000-7000-8000-00000000000${number.length}`,
  name,
  number,
  secondIdentifier: '',
  born: '',
})

describe('One person is kept in one record', () => {
  const kept = [line('Ida  Brekke', '104'), line('Ida Brekkestad', '1048'), line('Nora Lie', '10482')]
  const call = (async (_: string, { text }: { text: string }) => ({
    enough: true,
    more: false,
    found: kept.filter((each) =>
      `${each.name} ${each.number}`.toLowerCase().includes(text.toLowerCase().split(' ')[0] ?? ''),
    ),
  })) as Client['call']
  const namesOf = async (name: string, number: string) => {
    const found = await findAlike(call, profileOf(readProfile({ ...empty, name, number }, TODAY)))
    return found.map((each) => each.name)
  }

  it('finds the same name however it is spaced and written, and the same number', async () => {
    expect(await namesOf('ida brekke', '')).toEqual(['Ida  Brekke'])
    expect(await namesOf('Somebody', '10482')).toEqual(['Nora Lie'])
  })

  it('takes nobody for another because a part is the same', async () => {
    expect(await namesOf('Ida', '10')).toEqual([])
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
    arms: fc
      .record({ right: arm, left: arm })
      .filter(({ right, left }) => right.status !== 'less_affected' || left.status !== 'less_affected'),
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
