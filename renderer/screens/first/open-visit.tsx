import { ageWords, bornWords, nameOf } from '../../app/person.ts'
import { FaultNotice } from '../../app/fault-notice.tsx'
import { useDoing, useHost, useReading } from '../../app/host.tsx'
import { go } from '../../app/route.ts'
import { type Clinic, useSession } from '../../app/session.tsx'
import { Button } from '../../parts/button.tsx'
import { Page } from '../../parts/page.tsx'
import { Waiting } from '../../parts/waiting.tsx'
import { say } from '../../words/index.ts'

/** The first screen during a visit: nobody else's name, only the way back to this client or out of the visit. */
export function OpenVisit({ visit }: { readonly visit: NonNullable<Clinic['visit']> }) {
  const { reread } = useSession()
  const { call } = useHost()
  const { value, fault, again } = useReading('clients.read', { id: visit.client })
  const { run, fault: closeFault, isBusy } = useDoing()
  const close = () =>
    void run(async () => {
      await call('visits.close', { visit: visit.id })
      reread()
    })
  return (
    <Page title={say('first.open.title')} lead={say('first.open.lead')}>
      <FaultNotice fault={fault ?? closeFault} onAgain={again} />
      {value ? (
        <div>
          <p className="first-open-name">{nameOf(value.client)}</p>
          <p className="soft">
            {[ageWords(value.client.age), bornWords(value.client.profile.facts.birth)].join(' · ')}
          </p>
        </div>
      ) : (
        <Waiting />
      )}
      <div className="row">
        <Button look="strong" isLarge onPress={() => go(`client/${visit.client}`)}>
          {say('first.open.go_on')}
        </Button>
        <Button isLarge onPress={close} isDisabled={isBusy}>
          {say('first.open.end')}
        </Button>
      </div>
    </Page>
  )
}
