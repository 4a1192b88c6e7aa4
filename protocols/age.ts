/**
 * Ages in completed years and months by the civil calendar. Dates are `YYYY-MM-DD`; no clock and no zone comes
 * into it. Somebody born on 29 February completes a year on 1 March of a common year.
 */
import type { Birth } from './client.ts'

interface Day {
  readonly year: number
  readonly month: number
  readonly day: number
}

/** Completed years between which an age lies; equal where it is exact. */
export interface AgeRange {
  readonly from: number
  readonly to: number
}

const isLeap = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0

const daysIn = (year: number, month: number): number =>
  month === 2 ? (isLeap(year) ? 29 : 28) : [4, 6, 9, 11].includes(month) ? 30 : 31

/** The day that a text names; null where the calendar has none such. */
function dayOf(date: string): Day | null {
  const found = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date)
  if (found === null) return null
  const [year = 0, month = 0, day = 0] = found.slice(1).map(Number)
  return month >= 1 && month <= 12 && day >= 1 && day <= daysIn(year, month) ? { year, month, day } : null
}

const isBefore = (a: Day, b: Day): boolean =>
  a.year !== b.year ? a.year < b.year : a.month !== b.month ? a.month < b.month : a.day < b.day

const monthsBetween = (birth: Day, on: Day): number =>
  (on.year - birth.year) * 12 + on.month - birth.month - (on.day < birth.day ? 1 : 0)

/**
 * Completed months on a day of somebody born on another; null where a date is none, or the birth comes after.
 */
export function completedMonths(birth: string, on: string): number | null {
  const from = dayOf(birth)
  const to = dayOf(on)
  return from === null || to === null || isBefore(to, from) ? null : monthsBetween(from, to)
}

/** The first and the last day on which a birth may have been; null where nothing is known or a date is none. */
function daysOfBirth(birth: Birth): readonly [Day, Day] | null {
  switch (birth.known) {
    case 'date': {
      const day = dayOf(birth.date)
      return day === null ? null : [day, day]
    }
    case 'month': {
      const { year, month } = birth
      return [
        { year, month, day: 1 },
        { year, month, day: daysIn(year, month) },
      ]
    }
    case 'year':
      return [
        { year: birth.year, month: 1, day: 1 },
        { year: birth.year, month: 12, day: 31 },
      ]
    case 'told':
      return daysOfAge(birth.years, birth.on)
    case 'no':
      return null
  }
}

/** The days of birth of somebody who is so many completed years old on a day. */
function daysOfAge(years: number, on: string): readonly [Day, Day] | null {
  const day = dayOf(on)
  if (day === null) return null
  const year = day.year - years
  const last = { ...day, year, day: Math.min(day.day, daysIn(year, day.month)) }
  return [dayAfter({ ...day, year: year - 1 }), last]
}

function dayAfter({ year, month, day }: Day): Day {
  if (day < daysIn(year, month)) return { year, month, day: day + 1 }
  return month < 12 ? { year, month: month + 1, day: 1 } : { year: year + 1, month: 1, day: 1 }
}

/**
 * Age on a day in completed years, as a range where the birth isn't known to the day. Null where nothing is
 * known of the birth, where a date is none, or where the birth comes after the day.
 */
export function ageOn(birth: Birth, on: string): AgeRange | null {
  const days = daysOfBirth(birth)
  const day = dayOf(on)
  if (days === null || day === null) return null
  const [first, last] = days
  if (isBefore(day, first)) return null
  const latest = isBefore(day, last) ? day : last
  return { from: Math.floor(monthsBetween(latest, day) / 12), to: Math.floor(monthsBetween(first, day) / 12) }
}

/** Whether somebody can't have been born yet on a day, however uncertain the birth is. */
export function isBornAfter(birth: Birth, on: string): boolean {
  const days = daysOfBirth(birth)
  const day = dayOf(on)
  return days !== null && day !== null && isBefore(day, days[0])
}
