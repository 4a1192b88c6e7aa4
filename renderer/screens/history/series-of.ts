import { momentOf } from '../../charts/dates.ts'
import { drawn, type Series } from '../../charts/series.ts'
import { say } from '../../words/index.ts'
import { showDate } from '../../app/dates.ts'
import { tellSide, tellValue } from '../../steps/tell.ts'
import type { ScoreHistory } from './score-chart.tsx'

const placeKey = (place: Readonly<Record<string, string>>): string => Object.values(place).join(' ')

/** One line a place that a score was worked out for: usually one a hand, the right one first. */
export function seriesOf(score: ScoreHistory): readonly Series[] {
  const places = [...new Set(score.points.map((point) => placeKey(point.place)))]
  const order = ['right', 'left']
  places.sort((one, other) => order.indexOf(one) - order.indexOf(other))
  return places.map((key) => {
    const points = score.points.filter((point) => placeKey(point.place) === key)
    return {
      id: key || score.score,
      label: tellSide(points[0]?.place ?? {}) || key.replaceAll('_', ' ') || score.title,
      points: points.map((point) => ({
        id: point.administration,
        at: momentOf(point.at, point.on),
        value: point.value,
        over: point.over,
        joins: point.joins,
      })),
    }
  })
}

const dayOf = (date: Date): string =>
  [date.getFullYear(), date.getMonth() + 1, date.getDate()]
    .map((part) => String(part).padStart(2, '0'))
    .join('-')

/** What the chart shows, in sentences: each line's first and last value, its span, and where it is broken. */
export function describe(score: ScoreHistory, all: readonly Series[]): string {
  return all
    .map((series) => {
      const points = drawn(series)
      const first = points.at(0)
      const last = points.at(-1)
      if (first === undefined || last === undefined)
        return say('history.describe_none', { label: series.label })
      const value = (of: typeof first): string => tellValue(of.value, score.decimals, score.unit, of.over)
      if (points.length === 1)
        return say('history.describe_one', {
          label: series.label,
          value: value(first),
          day: showDate(dayOf(first.at)),
        })
      return say('history.describe_many', {
        label: series.label,
        count: points.length,
        first: value(first),
        firstDay: showDate(dayOf(first.at)),
        last: value(last),
        lastDay: showDate(dayOf(last.at)),
        breaks: points.slice(1).filter((point) => !point.joins).length,
      })
    })
    .join(' ')
}
