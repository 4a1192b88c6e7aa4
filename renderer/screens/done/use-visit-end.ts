import { useCallback, useEffect, useState } from 'react'
import { type Doing, useDoing, useHost } from '../../app/host.tsx'
import type { View } from '../giving/index.tsx'

interface VisitEnd {
  /** The stop for the client's sake ended the visit too. */
  readonly isDue: boolean
  readonly isEnded: boolean
  readonly fault: Doing['fault']
  readonly again: () => void
}

/** Closes the visit that a stop ended, once the test in it is over; a later visit of the client stays open. */
export function useVisitEnd({ id, rehearsal, stops }: View): VisitEnd {
  const { call } = useHost()
  const { run, fault } = useDoing()
  const [isEnded, setEnded] = useState(false)
  const isDue = !rehearsal && stops.some(({ ends }) => ends === 'visit')
  const close = useCallback(async () => {
    const { visit } = await call('clinic.state', {})
    const isOpen = visit?.administrations.some((each) => each.id === id) ?? false
    if (visit && isOpen) await call('visits.close', { visit: visit.id })
    setEnded(true)
  }, [call, id])
  const again = useCallback(() => {
    if (isDue) void run(close)
  }, [isDue, run, close])
  useEffect(again, [again])
  return { isDue, isEnded, fault, again }
}
