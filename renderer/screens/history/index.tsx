import type { Push } from '../../../main/contract/pushes.ts'
import { FaultNotice } from '../../app/fault-notice.tsx'
import { useReading } from '../../app/host.tsx'
import { Page, Section } from '../../parts/page.tsx'
import { Table } from '../../parts/table.tsx'
import { Waiting } from '../../parts/waiting.tsx'
import { say } from '../../words/index.ts'
import { showDate } from '../../app/dates.ts'
import { tellSide, tellValue } from '../../steps/tell.ts'
import { measured, ScoreChart, type ScoreHistory } from './score-chart.tsx'
import './history.css'

export interface HistoryScreenProps {
  readonly client: string
  /** The test's id: its history spans versions. */
  readonly protocol: string
  readonly onLeave: () => void
}

const touches = (push: Push): boolean => push.push === 'administration'

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
  return (
    <Section title={score.title} hint={say(`history.better_${score.better}`)}>
      <ScoreChart score={score} />
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
