import { useState } from 'react'
import { NOTHING_KNOWN } from '../../../protocols/client.ts'
import { FaultNotice } from '../../app/fault-notice.tsx'
import { useReading } from '../../app/host.tsx'
import { nameOf, restrictionsOf } from '../../app/person.ts'
import { useClinic } from '../../app/session.tsx'
import { Button } from '../../parts/button.tsx'
import { focusFirstProblem } from '../../parts/focus-first-problem.ts'
import { FormFoot } from '../../parts/form-foot.tsx'
import { Notice } from '../../parts/notice.tsx'
import { Page } from '../../parts/page.tsx'
import { Waiting } from '../../parts/waiting.tsx'
import { say } from '../../words/index.ts'
import type { Store, View } from '../giving/index.tsx'
import { type Card, barredBy, type Problems, type Proposal, readStart, startDraft } from './draft.ts'
import { StartForm } from './start-form.tsx'
import { useAct } from './use-act.ts'
import './starting.css'

export interface StartingProps {
  readonly view: View
  readonly store: Store
  /** False while the disk refuses and what was done is only in memory. */
  readonly saved: boolean
  readonly onChanged: () => void
  readonly onLeave: () => void
}

/** All that is asked before a test begins, on one page. */
export function PreparingScreen(props: StartingProps) {
  const { view, onLeave } = props
  const protocol = { from: view.protocol.from, key: view.protocol.id }
  const card = useReading('protocols.read', protocol)
  const proposal = useReading('administrations.proposal', { protocol, client: view.client })
  if (card.value && proposal.value)
    return <Preparing {...props} card={card.value} proposal={proposal.value} />
  const fault = card.fault ?? proposal.fault
  return (
    <Page title={view.protocol.title} back={{ label: say('starting.back'), onPress: onLeave }}>
      {fault ? <FaultNotice fault={fault} onAgain={card.fault ? card.again : proposal.again} /> : <Waiting />}
    </Page>
  )
}

interface PreparingProps extends StartingProps {
  readonly card: Card
  readonly proposal: Proposal
}

function Preparing({ view, store, onChanged, onLeave, card, proposal }: PreparingProps) {
  const { today } = useClinic()
  const { act, refused, fault, isBusy } = useAct(view, store)
  const restrictions = restrictionsOf(view.facts ?? NOTHING_KNOWN)
  const [draft, setDraft] = useState(() =>
    startDraft({ card, proposal, precautions: view.precautions, restrictions, today }),
  )
  const [isTried, setTried] = useState(false)
  const barred = barredBy(draft, view.precautions, restrictions)
  const give = async (body: Parameters<typeof act>[0]) => {
    if (await act(body)) onChanged()
  }
  const leave = async () => {
    if (await act({ kind: 'withdrawn', reason: say('starting.left.reason') })) onLeave()
  }
  const read = readStart(draft, { card, restrictions, today })
  const problems: Problems = isTried && 'problems' in read ? read.problems : {}
  const goOn = () => {
    setTried(true)
    if ('problems' in read) return focusFirstProblem()
    void give({ kind: 'prepared', ...read.prepared })
  }
  return (
    <Page
      isWide
      title={say('starting.title', { test: view.protocol.title })}
      lead={view.client === null ? say('starting.lead') : <ForWhom client={view.client} />}
      back={{ label: say('starting.back'), onPress: () => void leave() }}
    >
      <StartForm
        view={view}
        card={card}
        draft={draft}
        onChange={setDraft}
        problems={problems}
        restrictions={restrictions}
        wasVisitAsked={proposal.visit !== null}
        today={today}
      />
      {barred.length > 0 ? (
        <Barred onWithdraw={() => void give({ kind: 'withdrawn', reason: barredReason(barred) })} />
      ) : (
        <FormFoot
          label={say('starting.go_on')}
          onDone={goOn}
          isBusy={isBusy}
          problems={Object.keys(problems).length}
        >
          <FaultNotice fault={fault} />
          {refused ? <Notice tone="fault" isLive title={refused} /> : null}
        </FormFoot>
      )}
    </Page>
  )
}

/** What the record keeps as the reason; a reason holds 1000 letters. */
const barredReason = (what: readonly string[]) =>
  say('starting.barred.reason', { what: what.join(' ') }).slice(0, 1000)

/** Somebody answered that it is not to be given: the program takes no decision, it only offers the way out. */
function Barred({ onWithdraw }: { readonly onWithdraw: () => void }) {
  return (
    <div className="starting-barred">
      <Notice tone="caution" isLive title={say('starting.barred.title')}>
        <p>{say('starting.barred.text')}</p>
        <div>
          <Button look="strong" onPress={onWithdraw}>
            {say('starting.barred.leave')}
          </Button>
        </div>
      </Notice>
    </div>
  )
}

/** Whose test this is, from the first question on. */
function ForWhom({ client }: { readonly client: string }) {
  const { value } = useReading('clients.read', { id: client })
  return (
    <>
      {value ? (
        <p className="starting-whom">
          {[nameOf(value.client), value.client.profile.secondIdentifier].filter(Boolean).join(' · ')}
        </p>
      ) : null}
      <p>{say('starting.lead')}</p>
    </>
  )
}
