/** A date as typed: any part may be empty. */
export interface DateDraft {
  readonly day: string
  readonly month: string
  readonly year: string
}

export const NO_DATE: DateDraft = { day: '', month: '', year: '' }

type DateProblem = 'number' | 'day' | 'month' | 'year' | 'gap' | 'future' | 'past'

export type DateRead =
  | { readonly known: 'nothing' }
  | { readonly known: 'year'; readonly year: number }
  | { readonly known: 'month'; readonly year: number; readonly month: number }
  | { readonly known: 'date'; readonly date: string }
  | { readonly problem: DateProblem }

const pad = (number: number, digits: number) => String(number).padStart(digits, '0')

const isLeap = (year: number) => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0
const daysIn = (year: number, month: number) =>
  month === 2 ? (isLeap(year) ? 29 : 28) : [4, 6, 9, 11].includes(month) ? 30 : 31

export function draftOf(date: string | null): DateDraft {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date ?? '') ?? []
  if (!year || !month || !day) return NO_DATE
  return { day: String(Number(day)), month: String(Number(month)), year }
}

/**
 * Reads a typed date as far as it is known: a year, a month of a year or a day. `latest` and `earliest`
 * (`YYYY-MM-DD`) bound it; a part that is only partly known is judged by its first day.
 */
export function readDate(draft: DateDraft, bounds: { earliest: string; latest: string | null }): DateRead {
  const parts = [draft.year, draft.month, draft.day].map((part) => part.trim())
  const [year = '', month = '', day = ''] = parts
  if (parts.every((part) => part === '')) return { known: 'nothing' }
  if (parts.some((part) => part !== '' && !/^\d+$/.test(part))) return { problem: 'number' }
  if (year === '' || (month === '' && day !== '')) return { problem: 'gap' }
  if (!/^\d{4}$/.test(year)) return { problem: 'year' }
  const known = { year: Number(year), month: Number(month), day: Number(day) }
  if (month !== '' && (known.month < 1 || known.month > 12)) return { problem: 'month' }
  if (day !== '' && (known.day < 1 || known.day > daysIn(known.year, known.month))) return { problem: 'day' }
  const first = `${year}-${pad(month === '' ? 1 : known.month, 2)}-${pad(day === '' ? 1 : known.day, 2)}`
  if (bounds.latest !== null && first > bounds.latest) return { problem: 'future' }
  if (Number(year) < Number(bounds.earliest.slice(0, 4))) return { problem: 'past' }
  if (month === '') return { known: 'year', year: known.year }
  if (day === '') return { known: 'month', year: known.year, month: known.month }
  return { known: 'date', date: first }
}
