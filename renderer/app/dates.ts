const DAY = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'long',
  year: 'numeric',
  timeZone: 'UTC',
})

/** A civil date (`YYYY-MM-DD`) in words: no clock and no zone come into it. */
export function showDate(date: string): string {
  return DAY.format(new Date(`${date}T00:00:00Z`))
}
