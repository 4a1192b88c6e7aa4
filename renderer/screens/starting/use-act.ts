import { useCallback, useState } from 'react'
import type { Input } from '../../../main/contract/procedures.ts'
import { type Doing, useDoing, useHost } from '../../app/host.tsx'
import { tellRefusal } from '../../steps/refusal.tsx'
import type { Store, View } from '../giving/index.tsx'

export interface Acting extends Doing {
  /** Does an act; gives whether it was taken. */
  readonly act: (body: Input<'administrations.act'>['body']) => Promise<boolean>
  /** Why the last act was not taken, in words. */
  readonly refused: string | null
}

/** An examiner's act before and after the giving itself; a refusal is shown in place and changes nothing. */
export function useAct(view: View, store: Store): Acting {
  const { call } = useHost()
  const doing = useDoing()
  const [refused, setRefused] = useState<string | null>(null)
  const { run } = doing
  const act = useCallback(
    async (body: Input<'administrations.act'>['body']) => {
      let taken = false
      await run(async () => {
        const answer = await call('administrations.act', { store, id: view.id, body })
        setRefused(answer.taken ? null : tellRefusal(answer.refusal))
        taken = answer.taken
      })
      return taken
    },
    [run, call, store, view.id],
  )
  return { ...doing, act, refused }
}
