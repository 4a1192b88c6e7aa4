import { useCallback, useEffect } from 'react'
import { type Doing, useDoing, useHost } from '../../app/host.tsx'
import { useClinic } from '../../app/session.tsx'
import type { View } from '../giving/index.tsx'

interface VisitEnd {
  /** The stop for the client's sake ended the visit too; it is closed, or about to be. */
  readonly isDue: boolean
  readonly isEnded: boolean
  readonly fault: Doing['fault']
  readonly again: () => void
}

/** Closes the visit that a stop ended, once the test in it is over. */
export function useVisitEnd(view: View): VisitEnd {
  const { call } = useHost()
  const { visit } = useClinic()
  const { run, fault } = useDoing()
  const isDue = !view.rehearsal && view.stops.some(({ ends }) => ends === 'visit')
  const open = visit?.administrations.some(({ id }) => id === view.id) ? visit.id : null
  const again = useCallback(() => {
    if (isDue && open !== null) void run(async () => void (await call('visits.close', { visit: open })))
  }, [isDue, open, run, call])
  useEffect(again, [again])
  return { isDue, isEnded: isDue && open === null, fault, again }
}
