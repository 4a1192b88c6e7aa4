import type { Output } from '../../../main/contract/procedures.ts'
import type { Push } from '../../../main/contract/pushes.ts'
import { FaultNotice } from '../../app/fault-notice.tsx'
import { useReading } from '../../app/host.tsx'
import { type Series, span } from '../../charts/series.ts'
import { TimeChart } from '../../charts/time-chart.tsx'
import { Page, Section } from '../../parts/page.tsx'
import { Table } from '../../parts/table.tsx'
import { Waiting } from '../../parts/waiting.tsx'
import { say } from '../../words/index.ts'
import { showDate } from '../../app/dates.ts'
import { tellNumber, tellSide, tellUnit, tellValue } from '../../steps/tell.ts'
import { describe, seriesOf } from './series-of.ts'
import './history.css'

export interface HistoryScreenProps {
  readonly client: string
  /** The test's id: its history spans versions. */
  readonly protocol: string
  readonly onLeave: () => void
}

export type ScoreHistory = Output<'history.read'>[number]

/** The scores that ever had a value: one that never had has no history to show. */
const measured = (scores: readonly ScoreHistory[]): readonly ScoreHistory[] =>
  scores.filter((score) => score.points.some((point) => point.value !== null))

const touches = (push: Push): boolean => push.push === 'administration'

/** Within a season dates are told by the day, over longer spans by the month. */
function isShort(series: readonly Series[]): boolean {
  const [first, last] = span(series) ?? []
  return first !== undefined && last !== undefined && last.getTime() - first.getTime() < SEASON
}

const SEASON = 90 * 86_400_000

function Points({ score }: { score: ScoreHistory }) {
  return (
    <Table
      caption={say('history.table', { title: score.title })}
      columns={[
        { id: 'day', title: say('history.day') },
        { id: 'hand', title: say('history.hand') },
        { id: 'value', title: say('history.value'), isNumber: true },
        { id: 'version', title: say('history.version') },
        { id: 'notes', title: say('history.notes') },
      ]}
      rows={score.points.map((point) => ({
        id: `${point.administration} ${Object.values(point.place).join(' ')}`,
        cells: [
          showDate(point.on),
          tellSide(point.place) || say('history.whole_test'),
          tellValue(point.value, score.decimals, score.unit, point.over),
          point.version,
          [
            point.joins ? '' : say('history.not_joined'),
            point.deviations === 0 ? '' : say('history.deviations', { count: point.deviations }),
          ]
            .filter(Boolean)
            .join(' '),
        ],
      }))}
    />
  )
}

function OneScore({ score }: { score: ScoreHistory }) {
  const series = seriesOf(score)
  const tick = isShort(series) ? 'history.tick_day' : 'history.tick'
  return (
    <Section title={score.title} hint={say(`history.better_${score.better}`)}>
      <TimeChart
        series={series}
        title={say('history.chart', { title: score.title })}
        description={describe(score, series)}
        unit={tellUnit(score.unit)}
        showValue={(value) => tellNumber(value, score.decimals)}
        showDate={(date) => say(tick, { date })}
      />
      <Points score={score} />
    </Section>
  )
}

/** How the scores of one test went over time: each as a chart, and the same figures as a table beneath it. */
export default function HistoryScreen({ client, protocol, onLeave }: HistoryScreenProps) {
  const { value, fault, again } = useReading('history.read', { client, protocol }, touches)
  return (
    <Page title={say('history.title')} back={{ label: say('history.back'), onPress: onLeave }} isWide>
      {value === null ? (
        fault === null ? (
          <Waiting />
        ) : (
          <FaultNotice fault={fault} onAgain={again} />
        )
      ) : measured(value).length === 0 ? (
        <p>{say('history.nothing')}</p>
      ) : (
        measured(value).map((score) => <OneScore key={score.score} score={score} />)
      )}
    </Page>
  )
}
