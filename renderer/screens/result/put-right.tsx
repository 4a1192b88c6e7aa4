import type { Input } from '../../../main/contract/procedures.ts'
import type { Refusal } from '../../../protocols/runner/view.ts'
import type { Result } from '../../../protocols/scoring/result.ts'
import { useState } from 'react'
import { go } from '../../app/route.ts'
import { FaultNotice } from '../../app/fault-notice.tsx'
import { useDoing, useHost } from '../../app/host.tsx'
import { PutRight } from '../administration/put-right/put-right.tsx'
import { RefusalNotice } from '../../steps/refusal.tsx'

interface Props {
  readonly store: Input<'administrations.act'>['store']
  readonly result: Result
  /** Whose record it is in; null in a rehearsal. */
  readonly client: string | null
  readonly onClose: () => void
  readonly onDone: () => void
}

/** Putting right from a result: after the test, without its screen. */
export function PutResultRight({ store, result, client, onClose, onDone }: Props) {
  const { call } = useHost()
  const doing = useDoing()
  const [refusal, setRefusal] = useState<Refusal | null>(null)
  const id = result.administration
  return (
    <PutRight
      first={null}
      trials={result.trials}
      examiner={result.examiner}
      on={result.on}
      onAct={async (body) => {
        let taken = false
        await doing.run(async () => {
          const answer = await call('administrations.act', { store, id, body })
          taken = answer.taken
          setRefusal(answer.taken ? null : answer.refusal)
        })
        if (taken) onDone()
        return taken
      }}
      onMove={client === null ? null : () => go(`move/${client}/${id}`)}
      problem={
        <>
          <RefusalNotice refusal={refusal} />
          <FaultNotice fault={doing.fault} />
        </>
      }
      onClose={onClose}
    />
  )
}
