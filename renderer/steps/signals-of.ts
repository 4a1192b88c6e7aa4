/** The signals of a trial that a clock times, as the kinds that have one share them. */
import type { ClockTime } from '../../protocols/runner/moment.ts'
import type { SignalDue } from './face.ts'

interface Timing {
  readonly isReady: boolean
  /** True where the press that starts the clock is answered by a signal. */
  readonly goes: boolean
  readonly startedAt: ClockTime | null
  /** Seconds until the clock ends the trial by itself; null: it doesn't. */
  readonly lasts: number | null
  readonly halfTime: boolean
}

export function signalsOf({ isReady, goes, startedAt: from, lasts, halfTime }: Timing): readonly SignalDue[] {
  if (isReady) return [{ signal: 'ready', from: null, ms: 0 }]
  if (from === null) return []
  return [
    ...(goes ? [{ signal: 'go', from, ms: 0 } as const] : []),
    ...(lasts !== null && halfTime ? [{ signal: 'half', from, ms: lasts * 500 } as const] : []),
    ...(lasts === null ? [] : [{ signal: 'end', from, ms: lasts * 1000 } as const]),
  ]
}
