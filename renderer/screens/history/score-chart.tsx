import type { Output } from '../../../main/contract/procedures.ts'
import { type Series, span } from '../../charts/series.ts'
import { TimeChart } from '../../charts/time-chart.tsx'
import { tellNumber, tellUnit } from '../../steps/tell.ts'
import { say } from '../../words/index.ts'
import { describe, seriesOf } from './series-of.ts'

export type ScoreHistory = Output<'history.read'>[number]

/** The scores that ever had a value: one that never had has no history to show. */
export const measured = (scores: readonly ScoreHistory[]): readonly ScoreHistory[] =>
  scores.filter((score) => score.points.some((point) => point.value !== null))

const SEASON = 90 * 86_400_000

/** Within a season dates are told by the day, over longer spans by the month. */
function isShort(series: readonly Series[]): boolean {
  const [first, last] = span(series) ?? []
  return first !== undefined && last !== undefined && last.getTime() - first.getTime() < SEASON
}

/** One score over time, a line a hand. */
export function ScoreChart({ score }: { readonly score: ScoreHistory }) {
  const series = seriesOf(score)
  const tick = isShort(series) ? 'history.tick_day' : 'history.tick'
  return (
    <TimeChart
      series={series}
      title={say('history.chart', { title: score.title })}
      description={describe(score, series)}
      unit={tellUnit(score.unit)}
      showValue={(value) => tellNumber(value, score.decimals)}
      showDate={(date) => say(tick, { date })}
    />
  )
}
