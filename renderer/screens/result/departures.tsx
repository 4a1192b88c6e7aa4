import type { Result } from '../../../protocols/scoring/result.ts'
import { Section } from '../../parts/page.tsx'
import { Table } from '../../parts/table.tsx'
import { say } from '../../words/index.ts'
import { tellTime } from '../../steps/tell.ts'
import { showDate } from '../../app/dates.ts'
import type { Told } from './index.tsx'

/** A trial by the number that the list of trials gives it. */
const trialNumber = (result: Result, trial: string | null): number =>
  result.trials.findIndex((each) => each.id === trial) + 1

/** What stood, or stands: another client is not named. */
const standing = ({ code }: Result['corrections'][number], words: string): string =>
  code === 'client' && words === '' ? say('result.correction.another_client') : words

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
                standing(each, each.first),
                standing(each, each.now),
                say('result.reason_by', { reason: each.reason, time: tellTime(each.at), by: each.by }),
              ],
            }))}
          />
        </Section>
      )}
    </>
  )
}

/** What stood how when it was given, and how good its clock was. */
export function HowGiven({ result: { conditions, clock }, seal }: Pick<Told, 'result' | 'seal'>) {
  if (conditions.length === 0 && clock === null && seal === null) return null
  return (
    <Section title={say('result.how_given')}>
      {conditions.length === 0 ? null : (
        <dl className="result-conditions">
          {conditions.map(({ name, value, text }) => (
            <div key={name}>
              <dt>{name.replaceAll('_', ' ')}</dt>
              <dd>{text ?? value.replaceAll('_', ' ')}</dd>
            </div>
          ))}
        </dl>
      )}
      {clock === null ? null : (
        <p className="soft">
          {say('result.clock', { resolution: String(Math.round(clock.resolutionMs * 1000) / 1000) })}
        </p>
      )}
      {seal === null ? null : (
        <p className="soft">
          {say('result.seal', {
            code: seal.code,
            day: showDate(seal.at.slice(0, 10)),
            time: tellTime(seal.at),
          })}
        </p>
      )}
    </Section>
  )
}

/** What every reader of a result of this test should keep in mind. */
export function Cautions({ result: { cautions } }: { result: Result }) {
  if (cautions.length === 0) return null
  return (
    <Section title={say('result.cautions')}>
      <ul className="result-list">
        {cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </Section>
  )
}

/** The sources that figures refer to by number. */
export function Sources({ result: { sources } }: { result: Result }) {
  if (sources.length === 0) return null
  return (
    <Section title={say('result.sources')}>
      <ol className="result-sources">
        {sources.map(({ id, cite, seen }, index) => (
          <li key={id}>{say('result.source', { number: index + 1, cite: cite.trim(), seen })}</li>
        ))}
      </ol>
    </Section>
  )
}
