import { useState } from 'react'
import { FaultNotice } from '../../app/fault-notice.tsx'
import { useDoing, useHost } from '../../app/host.tsx'
import { go } from '../../app/route.ts'
import { useSession } from '../../app/session.tsx'
import { Button } from '../../parts/button.tsx'
import { Notice } from '../../parts/notice.tsx'
import { Page, Section } from '../../parts/page.tsx'
import { say } from '../../words/index.ts'
import { OpenVisit } from './open-visit.tsx'
import { Search } from './search.tsx'
import { WaitingWork } from './waiting-work.tsx'
import './first.css'

/** What the host says of the state of the records. */
const UPKEEP = ['disk_low', 'salvaged', 'damage_found', 'backup_failed', 'backup_old'] as const

/** Where a day begins: what waits, whom to find, or a test to learn. With a visit open, only the way back. */
export function FirstScreen() {
  const { clinic, reread } = useSession()
  if (clinic.visit) return <OpenVisit visit={clinic.visit} />
  return (
    <Page title={say('first.title', { name: clinic.user?.name ?? '' })} isWide>
      {clinic.notice.includes('not_for_real_clients') ? (
        <Notice tone="caution" title={say('first.unsafe.title')}>
          <p>{say('first.unsafe.why')}</p>
        </Notice>
      ) : null}
      {UPKEEP.filter((code) => clinic.notice.includes(code)).map((code) => (
        <Notice key={code} tone="caution" title={say(`first.${code}`)}>
          <p>{say(`first.${code}.mend`)}</p>
        </Notice>
      ))}
      <div className="first-columns">
        <FindClient onOpened={reread} />
        <div className="stack stack-wide">
          <WaitingWork onOpened={reread} />
          <Section title={say('first.rehearse.title')} hint={say('first.rehearse.hint')}>
            <div>
              <Button onPress={() => go('rehearsal')}>{say('first.rehearse')}</Button>
            </div>
          </Section>
        </div>
      </div>
    </Page>
  )
}

function FindClient({ onOpened }: { readonly onOpened: () => void }) {
  const { call } = useHost()
  const { run, fault, isBusy } = useDoing()
  const [text, setText] = useState('')
  const open = (client: string) =>
    void run(async () => {
      await call('visits.open', { client })
      onOpened()
      go(`client/${client}`)
    })
  return (
    <Section title={say('first.find.title')}>
      <Search text={text} onText={setText} onChosen={(found) => open(found.id)} isBusy={isBusy} takesFocus />
      <FaultNotice fault={fault} />
      <div className="first-add">
        <p className="soft">{say('first.add.hint')}</p>
        <Button look="strong" onPress={() => go('new-client')}>
          {say('first.add')}
        </Button>
      </div>
    </Section>
  )
}
