import type { SectionChart, SectionMoment } from '../../runner/chart-parts.ts'
import type { RepeatFields } from './keys.ts'

const timesOf = ({ section }: SectionMoment) => (section.fields as unknown as RepeatFields).times

/** The fewest and the most passes, as things stand; none where an expression has no value. */
function bounds(moment: SectionMoment): { readonly least: number; readonly most: number } {
  const times = timesOf(moment)
  if ('least' in times) {
    const least = moment.count(times.least) ?? 0
    return { least, most: Math.max(least, moment.count(times.most) ?? least) }
  }
  const count = moment.count(times) ?? 0
  return { least: count, most: count }
}

/** True where an expression that says how often has no value. */
function isUntold(moment: SectionMoment): boolean {
  const times = timesOf(moment)
  const counts = 'least' in times ? [times.least, times.most] : [times]
  return counts.some((count) => moment.count(count) === null)
}

const done = (moment: SectionMoment): number => (moment.pass === null ? 0 : Number(moment.pass))

export const chart: SectionChart = {
  ordered: () => false,
  order: () => null,
  refuses: () => null,
  next: (moment) => {
    const { least, most } = bounds(moment)
    const passes = done(moment)
    if (passes < least) return passes + 1
    const { until } = moment.section.fields as unknown as RepeatFields
    if (passes >= most || (until !== undefined && moment.holds(until, null) === true)) return null
    return passes + 1
  },
  unclear: (moment) => (moment.pass === null && isUntold(moment) ? [null] : []),
  due: (moment) => {
    const { least } = bounds(moment)
    return Array.from({ length: Math.max(0, least - done(moment)) }, (_, index) => done(moment) + index + 1)
  },
  of: (moment) => {
    const { least, most } = bounds(moment)
    return least === most ? most : null
  },
  leftOut: () => [],
}
