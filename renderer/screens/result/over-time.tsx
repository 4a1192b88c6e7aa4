import type { Push } from '../../../main/contract/pushes.ts'
import type { Result } from '../../../protocols/scoring/result.ts'
import { FaultNotice } from '../../app/fault-notice.tsx'
import { useReading } from '../../app/host.tsx'
import { Section } from '../../parts/page.tsx'
import { say } from '../../words/index.ts'
import { measured, ScoreChart, type ScoreHistory } from '../history/score-chart.tsx'

const touches = (push: Push): boolean => push.push === 'administration'

/** Values of one occasion alone are no course over time. */
const hasCourse = ({ points }: ScoreHistory): boolean =>
  new Set(points.filter(({ value }) => value !== null).map(({ administration }) => administration)).size > 1

/** How each score went over time, where the same test was given before; the figures stand in the history. */
export function OverTime({ result, client }: { readonly result: Result; readonly client: string }) {
  const { value, fault, again } = useReading(
    'history.read',
    { client, protocol: result.protocol.id },
    touches,
  )
  const scores = measured(value ?? []).filter(hasCourse)
  if (fault !== null) return <FaultNotice fault={fault} onAgain={again} />
  if (scores.length === 0) return null
  return (
    <Section title={say('history.title')} hint={say('result.over_time_hint')}>
      <div className="result-charts">
        {scores.map((score) => (
          <figure key={score.score} className="stack stack-tight">
            <figcaption>
              <b>{score.title}</b>{' '}
              <span className="soft">{say(`result.better_${score.better}`, { unit: 'none' })}</span>
            </figcaption>
            <ScoreChart score={score} />
          </figure>
        ))}
      </div>
    </Section>
  )
}
