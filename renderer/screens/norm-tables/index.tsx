import { useState } from 'react'
import type { Output } from '../../../main/contract/procedures.ts'
import type { Push } from '../../../main/contract/pushes.ts'
import { showDate } from '../../app/dates.ts'
import { FaultNotice } from '../../app/fault-notice.tsx'
import { useDoing, useHost, useReading } from '../../app/host.tsx'
import { useClinic } from '../../app/session.tsx'
import { Button } from '../../parts/button.tsx'
import { Dialog } from '../../parts/dialog.tsx'
import { Notice } from '../../parts/notice.tsx'
import { Page, Section } from '../../parts/page.tsx'
import { Waiting } from '../../parts/waiting.tsx'
import { tellUnit } from '../../steps/tell.ts'
import { say } from '../../words/index.ts'
import { NormRows } from './norm-rows.tsx'

export type NormTable = Output<'norms.read'>[number]

interface ProtocolKey {
  readonly from: 'library' | 'clinic'
  readonly key: string
}

const touchesProtocols = (push: Push) => push.push === 'protocols'

/** A test's norm tables, row by row, to be compared with their sources by a person who puts a name to it. */
export function NormTablesScreen({ protocol }: { readonly protocol: ProtocolKey }) {
  const card = useReading('protocols.read', protocol)
  const { value, fault, again } = useReading('norms.read', protocol, touchesProtocols)
  return (
    <Page
      title={say('norm_tables.title', { test: card.value?.line.title ?? protocol.key })}
      lead={say('norm_tables.lead')}
      back={{ label: say('norm_tables.back'), onPress: () => window.history.back() }}
      isWide
    >
      <FaultNotice fault={fault} onAgain={again} />
      {value || fault ? null : <Waiting />}
      {value?.length === 0 ? <p>{say('norm_tables.none')}</p> : null}
      {value?.map((table) => (
        <OneTable key={table.norm} protocol={protocol} table={table} />
      ))}
    </Page>
  )
}

interface OneTableProps {
  readonly protocol: ProtocolKey
  readonly table: NormTable
}

function OneTable({ protocol, table }: OneTableProps) {
  const { call } = useHost()
  const { run, fault, isBusy } = useDoing()
  const [isAsking, setAsking] = useState(false)
  const mark = (verified: boolean) =>
    void run(async () => {
      await call('norms.verify', { protocol, norm: table.norm, verified })
      setAsking(false)
    })
  const { title, score, unit, population, source, file, verified } = table
  return (
    <Section
      title={title}
      hint={say('norm_tables.about', { score, unit: tellUnit(unit) || 'none', population })}
    >
      <p className="small soft">
        {[say('norm_tables.source', { cite: source.cite }), source.note, say('norm_tables.file', { file })]
          .filter(Boolean)
          .join(' ')}
      </p>
      <Standing table={table} />
      <FaultNotice fault={fault} />
      <div>
        {verified ? (
          <Button
            label={say('norm_tables.take_back.label', { title })}
            onPress={() => mark(false)}
            isDisabled={isBusy}
          >
            {say('norm_tables.take_back')}
          </Button>
        ) : (
          <Button label={say('norm_tables.verify.label', { title })} onPress={() => setAsking(true)}>
            {say('norm_tables.verify')}
          </Button>
        )}
      </div>
      <NormRows table={table} />
      <Sure
        title={title}
        isOpen={isAsking}
        isBusy={isBusy}
        onYes={() => mark(true)}
        onNo={() => setAsking(false)}
      />
    </Section>
  )
}

function Standing({ table }: { readonly table: NormTable }) {
  if (table.verified) {
    const { by, at } = table.verified
    return (
      <Notice
        tone="plain"
        title={say('norm_tables.verified', { name: by, on: showDate(at.slice(0, 'YYYY-MM-DD'.length)) })}
      />
    )
  }
  const remembered = table.rows.filter(({ provenance }) => provenance === 'memory').length
  return (
    <Notice tone="caution" title={say('norm_tables.unverified')}>
      {remembered > 0 ? <p>{say('norm_tables.memory', { count: remembered })}</p> : null}
    </Notice>
  )
}

interface SureProps {
  readonly title: string
  readonly isOpen: boolean
  readonly isBusy: boolean
  readonly onYes: () => void
  readonly onNo: () => void
}

function Sure({ title, isOpen, isBusy, onYes, onNo }: SureProps) {
  const { user } = useClinic()
  return (
    <Dialog
      title={say('norm_tables.sure.title', { title })}
      isOpen={isOpen}
      onClose={onNo}
      actions={
        <>
          <Button look="strong" onPress={onYes} isDisabled={isBusy}>
            {say('norm_tables.sure.yes')}
          </Button>
          <Button onPress={onNo}>{say('norm_tables.sure.no')}</Button>
        </>
      }
    >
      <p>{say('norm_tables.sure.text', { name: user?.name ?? '' })}</p>
    </Dialog>
  )
}
