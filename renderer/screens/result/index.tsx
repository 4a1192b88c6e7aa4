import { useCallback } from 'react'
import type { Input, Output } from '../../../main/contract/procedures.ts'
import type { Push } from '../../../main/contract/pushes.ts'
import { go } from '../../app/route.ts'
import { Button } from '../../parts/button.tsx'
import { FaultNotice } from '../../app/fault-notice.tsx'
import { useReading } from '../../app/host.tsx'
import { Notice } from '../../parts/notice.tsx'
import { Page, Section } from '../../parts/page.tsx'
import { Waiting } from '../../parts/waiting.tsx'
import { say } from '../../words/index.ts'
import { AlongTheWay } from './along-the-way.tsx'
import { Cautions, Deviations, HowGiven, Sources } from './departures.tsx'
import { Norms } from './norms.tsx'
import { OverTime } from './over-time.tsx'
import { GradesToCome, Raters } from './raters.tsx'
import { RecordText } from './record-text.tsx'
import { ReportButton } from './report-button.tsx'
import { Scores } from './scores.tsx'
import { showDate } from '../../app/dates.ts'
import { tellTime } from '../../steps/tell.ts'
import { Trials } from './trials.tsx'
import './result.css'

export interface ResultScreenProps {
  readonly store: Input<'administrations.result'>['store']
  readonly id: string
  readonly onLeave: () => void
}

export type Told = Output<'administrations.result'>

function Lead({ result }: { result: Told['result'] }) {
  const { protocol } = result
  return (
    <p>
      {say('result.lead', {
        day: showDate(result.on),
        time: tellTime(result.startedAt),
        examiner: result.examiner,
      })}
      <br />
      {say(`result.given_by_${protocol.from}`, {
        title: protocol.title,
        version: protocol.version,
        wording: protocol.wording ?? protocol.language,
      })}
    </p>
  )
}

function Standing({ result }: { result: Told['result'] }) {
  return (
    <>
      {result.rehearsal ? <Notice tone="caution" title={say('result.rehearsal')} /> : null}
      {result.complete ? null : <Notice tone="caution" title={say('result.incomplete')} />}
    </>
  )
}

/** What one administration's result says. It is opened on request, never by the end of a test. */
export default function ResultScreen({ store, id, onLeave }: ResultScreenProps) {
  const touches = useCallback((push: Push) => push.push === 'administration' && push.id === id, [id])
  const { value: told, fault, again } = useReading('administrations.result', { store, id }, touches)
  const { value: about } = useReading('administrations.view', { store, id })
  const back = { label: say('result.back'), onPress: onLeave }
  if (told === null) {
    return (
      <Page title={say('result.title_waiting')} back={back}>
        {fault === null ? <Waiting /> : <FaultNotice fault={fault} onAgain={again} />}
      </Page>
    )
  }
  const { result } = told
  const client = about?.view.client ?? null
  return (
    <Page
      title={say('result.title', { title: result.protocol.title })}
      lead={<Lead result={result} />}
      back={back}
      isWide
    >
      <Standing result={result} />
      {about === null ? null : <GradesToCome view={about.view} store={store} />}
      <RecordText store={store} id={id} told={told}>
        <ReportButton store={store} id={id} />
        {client === null ? null : (
          <Button look="quiet" onPress={() => go(`history/${client}/${result.protocol.id}`)}>
            {say('result.history')}
          </Button>
        )}
      </RecordText>
      <Section title={say('result.scores')} hint={say('result.scores_hint')}>
        <Scores result={result} />
      </Section>
      {client === null ? null : <OverTime result={result} client={client} />}
      <Norms result={result} standing="verified" />
      <Deviations result={result} />
      {about === null ? null : <AlongTheWay {...about.view} />}
      {about === null ? null : <Raters {...about.view} />}
      <Trials store={store} result={result} client={client} onPutRight={again} />
      <HowGiven result={result} seal={told.seal} />
      <Norms result={result} standing="unverified" />
      <Cautions result={result} />
      <Sources result={result} />
    </Page>
  )
}
