import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { draftOf, readDate } from '../../renderer/parts/read-date.ts'
import { readNumber } from '../../renderer/parts/read-number.ts'

const bounds = { earliest: '1850-01-01', latest: '2026-11-25' }

describe('A typed date is read as far as it is known', () => {
  it('a year alone, a month of a year, a day', () => {
    expect(readDate({ day: '', month: '', year: '1958' }, bounds)).toEqual({ known: 'year', year: 1958 })
    expect(readDate({ day: '', month: '3', year: '1958' }, bounds)).toEqual({
      known: 'month',
      year: 1958,
      month: 3,
    })
    expect(readDate({ day: '4', month: '3', year: '1958' }, bounds)).toEqual({
      known: 'date',
      date: '1958-03-04',
    })
    expect(readDate({ day: '', month: '', year: '' }, bounds)).toEqual({ known: 'nothing' })
  })

  it.each([
    ['a day that has not come yet', { day: '26', month: '11', year: '2026' }, 'future'],
    ['a month that has not come yet', { day: '', month: '12', year: '2026' }, 'future'],
    ['a year of two digits', { day: '', month: '', year: '58' }, 'year'],
    ['the 30th of February', { day: '30', month: '2', year: '2000' }, 'day'],
    ['the 29th of February of a common year', { day: '29', month: '2', year: '1900' }, 'day'],
    ['the 13th month', { day: '1', month: '13', year: '1990' }, 'month'],
    ['a day without its month', { day: '4', month: '', year: '1990' }, 'gap'],
    ['a month without its year', { day: '', month: '4', year: '' }, 'gap'],
    ['letters', { day: '4th', month: '3', year: '1990' }, 'number'],
    ['a year long past', { day: '', month: '', year: '1600' }, 'past'],
  ])('refuses %s', (_, draft, problem) => {
    expect(readDate(draft, bounds)).toEqual({ problem })
  })

  it('today itself may be', () => {
    expect(readDate({ day: '25', month: '11', year: '2026' }, bounds)).toEqual({
      known: 'date',
      date: '2026-11-25',
    })
  })

  it('reads back every real day that it showed', () => {
    const days = fc.date({ min: new Date('1850-01-01'), max: new Date('2026-11-25'), noInvalidDate: true })
    fc.assert(
      fc.property(days, (day) => {
        const date = day.toISOString().slice(0, 10)
        expect(readDate(draftOf(date), bounds)).toEqual({ known: 'date', date })
      }),
    )
  })
})

describe('A typed number is read or refused with what is wrong', () => {
  const range = { least: 0, most: 130 }

  it.each([
    ['34', 34],
    [' 12,5 ', 12.5],
    ['0', 0],
    ['.5', 0.5],
    ['', null],
  ])('reads "%s"', (typed, number) => {
    expect(readNumber(typed, range)).toEqual({ number })
  })

  it.each([
    ['thirty', 'text'],
    ['1e3', 'text'],
    ['1 000', 'text'],
    ['0x10', 'text'],
    ['131', 'range'],
    ['-1', 'range'],
  ])('refuses "%s"', (typed, problem) => {
    expect(readNumber(typed, range)).toEqual({ problem, ...range })
  })

  it('asks for a whole number where one is needed', () => {
    expect(readNumber('3.5', { ...range, isWhole: true })).toMatchObject({ problem: 'whole' })
  })
})
