import type { Output } from '../../../main/contract/procedures.ts'
import type { Push } from '../../../main/contract/pushes.ts'
import { showDate } from '../../app/dates.ts'
import { FaultNotice } from '../../app/fault-notice.tsx'
import { useDoing, useHost, useReading } from '../../app/host.tsx'
import {
  absentWords,
  affectedWords,
  ageWords,
  bornWords,
  nameOf,
  type Person,
  restrictionsOf,
} from '../../app/person.ts'
import { go } from '../../app/route.ts'
import { useSession } from '../../app/session.tsx'
import { Button } from '../../parts/button.tsx'
import { Notice } from '../../parts/notice.tsx'
import { Page, Section } from '../../parts/page.tsx'
import { Waiting } from '../../parts/waiting.tsx'
import { say } from '../../words/index.ts'
import { AdministrationList } from './administration-list.tsx'
import './client.css'

const touchesAdministrations = (push: Push) => push.push === 'administration'

/** An open visit: who is here, what was given today and before, and the next test. No values stand here. */
export function ClientScreen({ client }: { readonly client: string }) {
  const { value, fault, again } = useReading('clients.read', { id: client }, touchesAdministrations)
  if (!value)
    return (
      <Page title={say('client.title')}>
        {fault ? <FaultNotice fault={fault} onAgain={again} /> : <Waiting />}
      </Page>
    )
  return <OpenClient person={value.client} administrations={value.administrations} />
}

interface OpenClientProps {
  readonly person: Person
  readonly administrations: Output<'clients.read'>['administrations']
}

function OpenClient({ person, administrations }: OpenClientProps) {
  const { clinic, reread } = useSession()
  const { call } = useHost()
  const { run, fault, isBusy } = useDoing()
  const visit = clinic.visit?.client === person.id ? clinic.visit : null
  const today = administrations.filter((line) => visit?.administrations.some((own) => own.id === line.id))
  const before = administrations.filter((line) => !today.includes(line))
  const begin = () =>
    void run(async () => {
      await call('visits.open', { client: person.id })
      reread()
    })
  const end = () =>
    void run(async () => {
      if (visit) await call('visits.close', { visit: visit.id })
      reread()
      go('')
    })
  return (
    <Page title={nameOf(person)} lead={<WhoLine person={person} />} isWide>
      <FaultNotice fault={fault} />
      <div className="row">
        {visit ? (
          <Button look="strong" isLarge onPress={() => go(`client/${person.id}/choose`)}>
            {say('client.choose')}
          </Button>
        ) : (
          <Button look="strong" isLarge onPress={begin} isDisabled={isBusy}>
            {say('client.begin')}
          </Button>
        )}
        <Button isLarge onPress={() => go(`client/${person.id}/profile`)}>
          {say('client.profile')}
        </Button>
        {visit ? (
          <Button isLarge onPress={end} isDisabled={isBusy}>
            {say('client.end')}
          </Button>
        ) : null}
      </div>
      <div className="client-columns">
        <div className="stack stack-wide">
          {visit ? (
            <Section title={say('client.today')} hint={say('client.today.hint')}>
              <AdministrationList lines={today} none={say('client.today.none')} client={person.id} />
            </Section>
          ) : null}
          <Section title={say('client.before')}>
            <AdministrationList lines={before} none={say('client.before.none')} client={person.id} />
          </Section>
        </div>
        <Facts person={person} />
      </div>
    </Page>
  )
}

function WhoLine({ person }: { readonly person: Person }) {
  const { profile, age } = person
  return (
    <p>
      {[
        profile.name ? profile.number : '',
        profile.secondIdentifier,
        ageWords(age),
        age ? bornWords(profile.facts.birth) : '',
      ]
        .filter(Boolean)
        .join(' · ')}
    </p>
  )
}

function Facts({ person }: { readonly person: Person }) {
  const { facts, agreement } = person.profile
  const restrictions = restrictionsOf(facts)
  const lines = [
    ['affected', affectedWords(facts)],
    ['absent', absentWords(facts)],
    ['dominant', say(`client.hand.${facts.dominantBefore}`)],
    ['used', say(`client.hand.${facts.usedNow}`)],
  ] as const
  return (
    <Section title={say('client.facts')}>
      <dl className="client-facts">
        {lines.map(([id, words]) => (
          <div key={id}>
            <dt>{say(`client.fact.${id}`)}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
      {restrictions.map((each) => (
        <Notice key={`${each.side}-${each.what}`} tone="caution" title={each.words}>
          <p>{each.detail}</p>
        </Notice>
      ))}
      {agreement.given === 'no' ? (
        <Notice tone="caution" title={say('client.disagreed')}>
          {agreement.on ? <p>{say('client.disagreed.on', { on: showDate(agreement.on) })}</p> : null}
        </Notice>
      ) : null}
    </Section>
  )
}
