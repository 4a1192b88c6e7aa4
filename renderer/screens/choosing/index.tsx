import { useState } from 'react'
import type { Output } from '../../../main/contract/procedures.ts'
import type { Push } from '../../../main/contract/pushes.ts'
import { FaultNotice } from '../../app/fault-notice.tsx'
import { useDoing, useHost, useReading } from '../../app/host.tsx'
import { go } from '../../app/route.ts'
import { useClinic } from '../../app/session.tsx'
import { Page, Section } from '../../parts/page.tsx'
import { Waiting } from '../../parts/waiting.tsx'
import { say } from '../../words/index.ts'
import { FaultyTest } from './faulty-test.tsx'
import { TestCard } from './test-card.tsx'
import './choosing.css'

export type Line = Output<'protocols.list'>[number]

const touchesProtocols = (push: Push) => push.push === 'protocols'

/** Which test next: what each is for, whom it suits, how long it takes, what it needs. */
export function ChoosingScreen({ client }: { readonly client: string | null }) {
  const { clinicProtocolsFolder } = useClinic()
  const { call } = useHost()
  const { value, fault, again } = useReading('protocols.list', {}, touchesProtocols)
  const { run, fault: openFault, isBusy } = useDoing()
  const [opening, setOpening] = useState<string | null>(null)
  const store = client === null ? 'rehearsal' : 'records'
  const open = (line: Line, wording: string | null) => {
    setOpening(line.key)
    void run(async () => {
      const protocol = { from: line.from, key: line.key }
      const { id } = await call('administrations.open', { store, protocol, client, wording })
      go(`administration/${store}/${id}`)
    })
  }
  const sound = (value ?? []).filter((line) => line.sound)
  const faulty = (value ?? []).filter((line) => !line.sound)
  return (
    <Page
      title={say(client === null ? 'choosing.title.rehearsal' : 'choosing.title')}
      lead={say(client === null ? 'choosing.lead.rehearsal' : 'choosing.lead')}
      back={
        client === null
          ? { label: say('choosing.back.first'), onPress: () => go('') }
          : { label: say('choosing.back.visit'), onPress: () => go(`client/${client}`) }
      }
      isWide
    >
      <FaultNotice fault={fault} onAgain={again} />
      {value || fault ? null : <Waiting />}
      <ul className="choosing-tests">
        {sound.map((line) => (
          <li key={`${line.from}-${line.key}`}>
            <TestCard
              line={line}
              isRehearsal={client === null}
              isBusy={isBusy}
              onChosen={(wording) => open(line, wording)}
              fault={opening === line.key ? openFault : null}
            />
          </li>
        ))}
      </ul>
      {faulty.length > 0 ? (
        <Section
          title={say('choosing.faulty')}
          hint={say('choosing.faulty.hint', { folder: clinicProtocolsFolder })}
        >
          {faulty.map((line) => (
            <FaultyTest key={`${line.from}-${line.key}`} line={line} />
          ))}
        </Section>
      ) : null}
      <p className="soft small">{say('choosing.own', { folder: clinicProtocolsFolder })}</p>
    </Page>
  )
}
