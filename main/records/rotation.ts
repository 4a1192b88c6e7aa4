/**
 * Which backups stay. Of each of the last seven days, four weeks and twelve months that have one, the newest stays;
 * the newest of all stays in any case. A week begins on Monday.
 */
const DAYS = 7
const WEEKS = 4
const MONTHS = 12
const DAY_MS = 86_400_000
/** 1970-01-01 was a Thursday: so many days after a Monday. */
const FIRST_WEEKDAY = 3

const dayOf = (at: string): number => Math.floor(Date.parse(`${at.slice(0, 10)}T00:00:00Z`) / DAY_MS)
const weekOf = (at: string): number => Math.floor((dayOf(at) + FIRST_WEEKDAY) / 7)
const monthOf = (at: string): string => at.slice(0, 7)

/** The newest of each of the newest so many groups. @param newestFirst moments, RFC 3339 local */
function newestOf(
  newestFirst: readonly string[],
  groupOf: (at: string) => unknown,
  groups: number,
): string[] {
  const seen = new Set<unknown>()
  return newestFirst.filter((at) => {
    const group = groupOf(at)
    if (seen.has(group) || seen.size === groups) return false
    seen.add(group)
    return true
  })
}

/** @param moments when each was made, in any order: as local time, so that a day is the clinic's day  @returns those that stay */
export function staying(moments: readonly string[]): ReadonlySet<string> {
  const newestFirst = [...moments].toSorted().toReversed()
  return new Set([
    ...newestOf(newestFirst, dayOf, DAYS),
    ...newestOf(newestFirst, weekOf, WEEKS),
    ...newestOf(newestFirst, monthOf, MONTHS),
  ])
}
