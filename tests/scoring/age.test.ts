import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { ageOn, completedMonths, isBornAfter } from '../../protocols/age.ts'
import type { Birth } from '../../protocols/client.ts'

const born = (date: string): Birth => ({ known: 'date', date })

describe('completed years on a day', () => {
  test.each([
    ['1990-06-15', '2026-06-14', 35],
    ['1990-06-15', '2026-06-15', 36],
    ['2000-02-29', '2021-02-28', 20],
    ['2000-02-29', '2021-03-01', 21],
    ['2000-02-29', '2024-02-28', 23],
    ['2000-02-29', '2024-02-29', 24],
    ['2026-03-01', '2026-03-01', 0],
    ['1899-12-31', '2000-01-01', 100],
  ])('born %s, on %s: %i', (birth, on, years) => {
    expect(ageOn(born(birth), on)).toEqual({ from: years, to: years })
  })

  test('months count as the calendar does', () => {
    expect(completedMonths('2019-01-31', '2026-06-30')).toBe(88)
    expect(completedMonths('2019-01-31', '2026-07-01')).toBe(89)
    expect(completedMonths('2020-02-29', '2021-02-28')).toBe(11)
  })
})

describe('an uncertain birth gives the range it leaves open', () => {
  test.each<[string, Birth, string, number, number]>([
    ['the month is known', { known: 'month', year: 1990, month: 6 }, '2026-06-15', 35, 36],
    ['the month is past', { known: 'month', year: 1990, month: 6 }, '2026-07-01', 36, 36],
    ['the year is known', { known: 'year', year: 1990 }, '2026-06-15', 35, 36],
    ['the year is over', { known: 'year', year: 1990 }, '2026-12-31', 36, 36],
    ['born this year', { known: 'year', year: 2026 }, '2026-06-15', 0, 0],
    ['told today', { known: 'told', years: 40, on: '2026-06-15' }, '2026-06-15', 40, 40],
    ['told half a year ago', { known: 'told', years: 40, on: '2026-01-15' }, '2026-06-15', 40, 41],
    ['told a year ago', { known: 'told', years: 40, on: '2025-06-15' }, '2026-06-15', 41, 41],
    ['told on a leap day', { known: 'told', years: 1, on: '2024-02-29' }, '2024-03-01', 1, 2],
  ])('%s', (_what, birth, on, from, to) => {
    expect(ageOn(birth, on)).toEqual({ from, to })
  })

  test.each<[string, Birth]>([
    ['the birth is unknown', { known: 'no' }],
    ['the birth comes after', born('2026-06-16')],
    ['the year comes after', { known: 'year', year: 2027 }],
    ['there is no such day', born('2026-02-30')],
  ])('none where %s', (_what, birth) => {
    expect(ageOn(birth, '2026-06-15')).toBeNull()
  })

  test('a birth after the day is told from an unknown one', () => {
    expect(isBornAfter(born('2026-06-16'), '2026-06-15')).toBe(true)
    expect(isBornAfter(born('2026-06-15'), '2026-06-15')).toBe(false)
    expect(isBornAfter({ known: 'no' }, '2026-06-15')).toBe(false)
    expect(isBornAfter({ known: 'year', year: 2026 }, '2026-06-15')).toBe(false)
  })
})

/** Every day of some years, as civil dates, by the platform's calendar: a reference of its own. */
function daysFrom(year: number, years: number): string[] {
  const days: string[] = []
  for (let at = Date.UTC(year, 0, 1); at < Date.UTC(year + years, 0, 1); at += 86_400_000)
    days.push(new Date(at).toISOString().slice(0, 10))
  return days
}

describe('against a calendar walked day by day', () => {
  const days = daysFrom(2015, 10)
  const day = fc.constantFrom(...days)

  test('an age told on a day is the age of everybody who has it, and of nobody else', () => {
    fc.assert(
      fc.property(day, day, fc.integer({ min: 0, max: 4 }), (told, later, years) => {
        fc.pre(told <= later)
        const births = days.filter((birth) => ageOn(born(birth), told)?.from === years)
        fc.pre(births.length > 364)
        const ages = births.map((birth) => ageOn(born(birth), later)?.from ?? -1)
        expect(ageOn({ known: 'told', years, on: told }, later)).toEqual({
          from: Math.min(...ages),
          to: Math.max(...ages),
        })
      }),
      { numRuns: 60 },
    )
  })

  test('an age is never less a day later, and rises by one in a year', () => {
    fc.assert(
      fc.property(day, fc.integer({ min: 0, max: days.length - 2 }), (birth, at) => {
        const [today = '', tomorrow = ''] = days.slice(at, at + 2)
        fc.pre(birth <= today)
        const [a = -1, b = -1] = [today, tomorrow].map((on) => ageOn(born(birth), on)?.from)
        expect([a, a + 1]).toContain(b)
        expect(completedMonths(birth, tomorrow)).toBeGreaterThanOrEqual(12 * b)
      }),
    )
  })
})
