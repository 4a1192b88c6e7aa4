/**
 * The wall clock as records need it: what time it is, and how far local time is from UTC at that moment. It is
 * for the record only; durations of trials come from input stamps and never from here.
 */
export interface WallClock {
  /** Milliseconds since 1970-01-01T00:00:00Z. */
  now(): number
  /** Minutes that local time is ahead of UTC at that moment; negative in the west. */
  offsetMinutes(at: number): number
}

/** The machine's own clock and time zone. */
export const systemClock: WallClock = {
  now: () => Date.now(),
  offsetMinutes: (at) => -new Date(at).getTimezoneOffset(),
}

const two = (value: number) => String(value).padStart(2, '0')

/** The minute that was last written, since most moments are of the same minute as the one before. */
let written = { minute: Number.NaN, text: '' }

/**
 * A moment as RFC 3339 local time with its offset, to the millisecond: `2026-03-29T03:00:00.000+02:00`. The
 * offset is part of what is kept, so a summer-time change or a journey never alters what a record says.
 */
export function localTime(at: number, offsetMinutes: number): string {
  const local = Math.floor(at) + offsetMinutes * 60_000
  const minute = Math.floor(local / 60_000)
  if (minute !== written.minute) {
    written = { minute, text: new Date(minute * 60_000).toISOString().slice(0, 17) }
  }
  const ms = local - minute * 60_000
  const size = Math.abs(offsetMinutes)
  const offset = `${offsetMinutes < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`
  return `${written.text}${two(Math.floor(ms / 1000))}.${String(ms % 1000).padStart(3, '0')}${offset}`
}

/** The pattern of a moment as `localTime` writes it. */
export const LOCAL_TIME = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}[+-]\d\d:\d\d$/
