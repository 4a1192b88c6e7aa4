import type { Result } from '../../../protocols/scoring/result.ts'
import { Section } from '../../parts/page.tsx'
import { Table } from '../../parts/table.tsx'
import { say } from '../../words/index.ts'
import { tellTime } from '../../steps/tell.ts'

/** A trial by the number that the list of trials gives it. */
const trialNumber = (result: Result, trial: string | null): number =>
  result.trials.findIndex((each) => each.id === trial) + 1

/** What was done otherwise than the protocol says, and what was put right later. */
export function Deviations({ result }: { result: Result }) {
  return (
    <>
      {result.deviations.length === 0 ? null : (
        <Section title={say('result.deviations')}>
          <Table
            caption={say('result.deviations')}
            columns={[
              { id: 'what', title: say('result.what') },
              { id: 'reason', title: say('result.reason_title') },
              { id: 'norms', title: say('result.norms_then') },
              { id: 'when', title: say('result.when') },
            ]}
            rows={result.deviations.map((each) => ({
              id: `${each.at} ${each.what}`,
              cells: [
                say(`result.deviation.${each.code}`, { what: each.what.replaceAll('_', ' ') }),
                each.reason,
                say(`result.norms_now.${each.norms}`),
                say('result.at_by', { time: tellTime(each.at), by: each.by }),
              ],
            }))}
          />
        </Section>
      )}
      {result.corrections.length === 0 ? null : (
        <Section title={say('result.corrections')} hint={say('result.corrections_hint')}>
          <Table
            caption={say('result.corrections')}
            columns={[
              { id: 'what', title: say('result.what') },
              { id: 'first', title: say('result.first') },
              { id: 'now', title: say('result.now') },
              { id: 'reason', title: say('result.reason_title') },
            ]}
            rows={result.corrections.map((each) => ({
              id: `${each.at} ${each.code}`,
              cells: [
                say(`result.correction.${each.code}`, { trial: trialNumber(result, each.trial) }),
                each.first,
                each.now,
                say('result.reason_by', { reason: each.reason, time: tellTime(each.at), by: each.by }),
              ],
            }))}
          />
        </Section>
      )}
    </>
  )
}

/** What every reader of this result should keep in mind, and how it was given. */
export function Cautions({ result }: { result: Result }) {
  return (
    <Section title={say('result.cautions')}>
      <ul className="result-list">
        {result.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
        {result.conditions.map((condition) => (
          <li key={condition.name}>
            {say('result.condition', {
              name: condition.name.replaceAll('_', ' '),
              value: condition.text ?? condition.value.replaceAll('_', ' '),
            })}
          </li>
        ))}
        {result.clock === null ? null : (
          <li>
            {say('result.clock', { resolution: String(Math.round(result.clock.resolutionMs * 1000) / 1000) })}
          </li>
        )}
      </ul>
    </Section>
  )
}
