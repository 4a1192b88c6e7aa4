import { useCallback, useEffect, useMemo, useSyncExternalStore } from 'react'
import type { Input } from '../../../main/contract/procedures.ts'
import type { Push } from '../../../main/contract/pushes.ts'
import { useHost, usePushes } from '../../app/host.tsx'
import { openDesk } from './desk.ts'

const later = (ms: number): Promise<void> =>
  new Promise((done) => {
    setTimeout(done, ms)
  })

/** The desk of one administration, as long as its screen stands. */
export function useDesk(store: Input<'administrations.act'>['store'], id: string) {
  const { call } = useHost()
  const desk = useMemo(() => openDesk({ call, later }, { store, id }), [call, store, id])
  const state = useSyncExternalStore(desk.listen, desk.state)
  useEffect(() => void desk.read(), [desk])
  usePushes(
    useCallback(
      (push: Push) => {
        if (push.push === 'administration' && push.id === id) desk.heard()
      },
      [desk, id],
    ),
  )
  return { desk, state }
}
