/** Wall time is for the record; the one thing told from it is whether there was a long gap between two events. */

const RFC3339 = /^(\d{4})-(\d{2})-(\d{2})T(\d{2}):(\d{2}):(\d{2}(?:\.\d+)?)(?:Z|([+-])(\d{2}):(\d{2}))$/

/** Days since 1970-01-01 of a civil date (H. Hinnant's algorithm, public domain). */
function daysOf(year: number, month: number, day: number): number {
  const y = month <= 2 ? year - 1 : year
  const era = Math.floor(y / 400)
  const yearOfEra = y - era * 400
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1
  return (
    era * 146_097 +
    yearOfEra * 365 +
    Math.floor(yearOfEra / 4) -
    Math.floor(yearOfEra / 100) +
    dayOfYear -
    719_468
  )
}

/** Seconds of an RFC 3339 time, offset taken into account; null where the text is none. */
function secondsOf(at: string): number | null {
  const parts = RFC3339.exec(at)
  if (parts === null) return null
  const [year, month, day, hour, minute, second] = parts.slice(1, 7).map(Number) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ]
  const offset = (Number(parts[8] ?? 0) * 60 + Number(parts[9] ?? 0)) * (parts[7] === '-' ? -60 : 60)
  return daysOf(year, month, day) * 86_400 + hour * 3600 + minute * 60 + second - offset
}

/** Seconds from one wall time to a later one, across zones; 0 where either is none or time ran backwards. */
export function secondsBetween(from: string, to: string): number {
  const [start, end] = [secondsOf(from), secondsOf(to)]
  return start === null || end === null ? 0 : Math.max(0, end - start)
}
