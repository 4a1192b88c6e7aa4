import { useEffect, useState } from 'react'
import type { ClockTime } from '../../protocols/runner/moment.ts'
import { secondsLeft, secondsRun } from '../input/ticker.ts'
import { say } from '../words/index.ts'
import './steps.css'

interface Props {
  readonly from: ClockTime
  /** ms to count down from; null: the clock counts up. */
  readonly span: number | null
  readonly isShown: boolean
}

/** What a running clock shows now; it is a courtesy to the examiner, no time is ever taken from it. */
function useShown(from: ClockTime, span: number | null, isShown: boolean): string {
  const [now, setNow] = useState(() => performance.now())
  useEffect(() => {
    if (!isShown) return
    const timer = setInterval(() => setNow(performance.now()), 100)
    return () => clearInterval(timer)
  }, [isShown])
  return span === null ? secondsRun(from, now).toFixed(1) : String(secondsLeft(from, span, now))
}

export function RunningClock({ from, span, isShown }: Props) {
  const shown = useShown(from, span, isShown)
  return (
    <p className="step-clock">
      <span className="step-clock-sign" aria-hidden="true" />
      {isShown ? (
        <>
          <span className="step-clock-number" aria-hidden="true">
            {say(span === null ? 'steps.clock_seconds' : 'steps.clock_left', { seconds: shown })}
          </span>
          <span className="unseen">{say('steps.clock_runs')}</span>
        </>
      ) : (
        <span className="step-clock-number">{say('steps.clock_runs')}</span>
      )}
    </p>
  )
}
