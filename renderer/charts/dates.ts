/** A civil date as a moment of this place's day, so that no time zone moves it to the day before. */
export function civilDay(on: string): Date {
  const [year = 1970, month = 1, day = 1] = on.split('-').map(Number)
  return new Date(year, month - 1, day, 12)
}

/** The moment of a point in time: the clock's, unless the date was put right to another day. */
export function momentOf(at: string, on: string): Date {
  return at.startsWith(on) ? new Date(at) : civilDay(on)
}
