import type { Output } from '../../../main/contract/procedures.ts'
import { FaultNotice } from '../../app/fault-notice.tsx'
import { usePushes, useReading } from '../../app/host.tsx'
import { go } from '../../app/route.ts'
import { Notice } from '../../parts/notice.tsx'
import { Page } from '../../parts/page.tsx'
import { Waiting } from '../../parts/waiting.tsx'
import { say } from '../../words/index.ts'
import { useCallback } from 'react'
import AdministrationScreen from '../administration/index.tsx'
import { DoneScreen } from '../done/index.tsx'
import { ConfirmingScreen } from '../starting/confirming.tsx'
import { PreparingScreen } from '../starting/preparing.tsx'
import './giving.css'

export type View = Output<'administrations.view'>['view']
export type Store = 'records' | 'rehearsal'

export interface GivingProps {
  readonly store: Store
  readonly administration: string
}

/** Leads through one administration: prepare, confirm, give, done. The chart says where it stands. */
export function GivingScreen({ store, administration }: GivingProps) {
  const { value, fault, again } = useReading('administrations.view', { store, id: administration })
  const phase = value?.view.phase
  // The administration's own screen follows the pushes itself; elsewhere somebody else may have moved it on.
  const isGiving = phase !== undefined && GIVING.has(phase)
  usePushes(
    useCallback(
      (push) => {
        if (!isGiving && push.push === 'administration' && push.id === administration) again()
      },
      [isGiving, administration, again],
    ),
  )
  if (!value)
    return (
      <Page title={say('giving.opening')}>
        {fault ? <FaultNotice fault={fault} onAgain={again} /> : <Waiting />}
      </Page>
    )
  const { view, saved } = value
  const leave = () => (store === 'rehearsal' ? go('rehearsal') : go(`client/${view.client ?? ''}`))
  const props = { view, store, saved, onChanged: again, onLeave: leave }
  return (
    <>
      {store === 'rehearsal' ? (
        <aside className="giving-rehearsal" aria-label={say('app.rehearsal.label')}>
          {say('app.rehearsal')}
        </aside>
      ) : null}
      {saved || isGiving ? null : <Unsaved />}
      {view.phase === 'preparing' ? <PreparingScreen {...props} /> : null}
      {view.phase === 'confirming' ? <ConfirmingScreen {...props} /> : null}
      {isGiving ? (
        <AdministrationScreen administration={administration} store={store} onLeave={again} />
      ) : null}
      {view.phase === 'finished' || view.phase === 'withdrawn' ? <DoneScreen {...props} /> : null}
    </>
  )
}

/** Outside the giving itself, whose screen says it in its own place. */
function Unsaved() {
  return (
    <aside className="giving-unsaved" aria-label={say('giving.unsaved.label')}>
      <Notice tone="fault" isLive title={say('giving.unsaved')}>
        <p>{say('giving.unsaved.mend')}</p>
      </Notice>
    </aside>
  )
}

const GIVING: ReadonlySet<View['phase']> = new Set(['giving', 'paused', 'halted', 'stale', 'rating'])
