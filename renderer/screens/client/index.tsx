import { SIDES } from '../../../protocols/client.ts'
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
  const { clinic } = useSession()
  const visit = clinic.visit?.client === person.id ? clinic.visit : null
  const today = administrations.filter((line) => visit?.administrations.some((own) => own.id === line.id))
  const before = administrations.filter((line) => !today.includes(line))
  return (
    <Page title={nameOf(person)} lead={<WhoLine person={person} />} isWide>
      <VisitActions client={person.id} visit={visit?.id ?? null} />
      <div className="client-columns">
        <div className="stack stack-wide">
          {visit ? (
            <Section title={say('client.today')} hint={say('client.today.hint')}>
              <AdministrationList lines={today} none={say('client.today.none')} client={person.id} isNow />
            </Section>
          ) : null}
          <Section title={say('client.before')}>
            <AdministrationList
              lines={before}
              none={say('client.before.none')}
              client={person.id}
              isNow={false}
            />
          </Section>
        </div>
        <Facts person={person} />
      </div>
    </Page>
  )
}

interface VisitActionsProps {
  readonly client: string
  /** The open visit of this client; null: none is open. */
  readonly visit: string | null
}

function VisitActions({ client, visit }: VisitActionsProps) {
  const { reread } = useSession()
  const { call } = useHost()
  const { run, fault, isBusy } = useDoing()
  const begin = () =>
    void run(async () => {
      await call('visits.open', { client })
      reread()
    })
  const end = () =>
    void run(async () => {
      if (visit) await call('visits.close', { visit })
      reread()
      go('')
    })
  return (
    <>
      <FaultNotice fault={fault} />
      <div className="row">
        {visit ? (
          <Button look="strong" isLarge onPress={() => go(`client/${client}/choose`)}>
            {say('client.choose')}
          </Button>
        ) : (
          <Button look="strong" isLarge onPress={begin} isDisabled={isBusy}>
            {say('client.begin')}
          </Button>
        )}
        <Button isLarge onPress={() => go(`client/${client}/profile`)}>
          {say('client.profile')}
        </Button>
        {visit ? (
          <Button isLarge onPress={end} isDisabled={isBusy}>
            {say('client.end')}
          </Button>
        ) : null}
      </div>
    </>
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
        {SIDES.filter((side) => facts.arms[side].condition).map((side) => (
          <div key={side}>
            <dt>{say(`client.fact.condition.${side}`)}</dt>
            <dd>{[facts.arms[side].condition, facts.arms[side].since].filter(Boolean).join(', ')}</dd>
          </div>
        ))}
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
