import { useState } from 'react'
import { FaultNotice } from '../../app/fault-notice.tsx'
import { useDoing, useHost } from '../../app/host.tsx'
import { bornLine } from '../../app/person.ts'
import { go } from '../../app/route.ts'
import { useSession } from '../../app/session.tsx'
import { Button } from '../../parts/button.tsx'
import { Field } from '../../parts/field.tsx'
import { focusFirstProblem } from '../../parts/focus-first-problem.ts'
import { FormFoot } from '../../parts/form-foot.tsx'
import { Notice } from '../../parts/notice.tsx'
import { Page, Section } from '../../parts/page.tsx'
import { say } from '../../words/index.ts'
import { type Found, Search } from '../first/search.tsx'

export interface MovingProps {
  /** Whose record the administration is in now. */
  readonly client: string
  readonly administration: string
}

/** A test given to somebody else than the record says: it goes to the right person, the first keeps a trace. */
export function MovingScreen({ client, administration }: MovingProps) {
  const { clinic } = useSession()
  const back = { label: say('moving.back'), onPress: () => go(`client/${client}`) }
  return (
    <Page title={say('moving.title')} lead={say('moving.lead')} back={back}>
      {clinic.visit ? (
        <EndVisitFirst visit={clinic.visit.id} />
      ) : (
        <ChooseRightClient client={client} administration={administration} />
      )}
    </Page>
  )
}

/** While a visit is open no other client's name comes on screen, so it has to end before the search. */
function EndVisitFirst({ visit }: { readonly visit: string }) {
  const { reread } = useSession()
  const { call } = useHost()
  const { run, fault, isBusy } = useDoing()
  const end = () =>
    void run(async () => {
      await call('visits.close', { visit })
      reread()
    })
  return (
    <>
      <Notice tone="caution" title={say('moving.visit.title')}>
        <p>{say('moving.visit.text')}</p>
      </Notice>
      <FaultNotice fault={fault} />
      <div>
        <Button look="strong" isLarge onPress={end} isDisabled={isBusy}>
          {say('moving.visit.end')}
        </Button>
      </div>
    </>
  )
}

function ChooseRightClient({ client, administration }: MovingProps) {
  const { reread } = useSession()
  const { call } = useHost()
  const { run, fault, isBusy } = useDoing()
  const [text, setText] = useState('')
  const [to, setTo] = useState<Found | null>(null)
  const [reason, setReason] = useState('')
  const [isTried, setTried] = useState(false)
  const isReasonMissing = reason.trim() === ''
  const isSame = to?.id === client
  const move = () => {
    setTried(true)
    if (!to || isSame || isReasonMissing) return focusFirstProblem()
    void run(async () => {
      await call('administrations.move', { id: administration, client: to.id, reason: reason.trim() })
      await call('visits.open', { client: to.id })
      reread()
      go(`client/${to.id}`)
    })
  }
  const problems = [!to || isSame, isReasonMissing].filter(Boolean).length
  return (
    <>
      <Section title={say('moving.to')}>
        {to ? (
          <div className="row row-apart">
            <p>
              <strong>{to.name || say('person.number', { number: to.number })}</strong>
              {` · ${[to.name ? to.number : '', to.secondIdentifier, bornLine(to.born)].filter(Boolean).join(' · ')}`}
            </p>
            <Button look="quiet" onPress={() => setTo(null)}>
              {say('moving.other')}
            </Button>
          </div>
        ) : (
          <Search text={text} onText={setText} onChosen={setTo} isBusy={isBusy} takesFocus />
        )}
        {isTried && !to ? <Notice tone="fault" isLive title={say('moving.to.missing')} /> : null}
        {isSame ? <Notice tone="fault" isLive title={say('moving.to.same')} /> : null}
      </Section>
      <Section title={say('moving.why')}>
        <Field
          isMultiline
          width="wide"
          label={say('moving.reason')}
          hint={say('moving.reason.hint')}
          value={reason}
          maxLength={1000}
          onChange={setReason}
          error={isTried && isReasonMissing ? say('moving.reason.missing') : null}
        />
      </Section>
      <FormFoot label={say('moving.move')} onDone={move} isBusy={isBusy} problems={isTried ? problems : 0}>
        <FaultNotice fault={fault} />
      </FormFoot>
    </>
  )
}
