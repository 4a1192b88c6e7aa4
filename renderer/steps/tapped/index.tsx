import type { StepView } from '../../../protocols/runner/view.ts'
import type { TappedFace } from '../../../protocols/steps/tapped/face.ts'
import { say } from '../../words/index.ts'
import { Cues } from '../cues.tsx'
import type { FaceProps, StepFace } from '../face.ts'
import { RunningClock } from '../running-clock.tsx'
import { signalsOf } from '../signals-of.ts'
import { tellValue } from '../tell.ts'

const faceIn = (step: StepView): TappedFace => step.face as unknown as TappedFace

function Opening({ face, state }: { readonly face: TappedFace; readonly state: string }) {
  return (
    <>
      <p className="step-state">{say(`steps.tapped.is_${state}`)}</p>
      {face.start === null ? (
        <p className="step-state">{say('steps.tapped.by_first_press')}</p>
      ) : (
        <Cues start={face.start} />
      )}
      <p className="step-aside">{say('steps.tapped.lasts', { window: tellValue(face.window, 0, 's') })}</p>
    </>
  )
}

function Face({ step, showClock }: FaceProps) {
  const face = faceIn(step)
  if (face.startedAt !== null)
    return (
      <>
        <RunningClock from={face.startedAt} span={(face.window ?? 0) * 1000} isShown={showClock} />
        {showClock ? <p className="step-aside">{say('steps.tapped.so_far', { count: face.count })}</p> : null}
      </>
    )
  if (step.state === 'over') return <p className="step-state">{say('steps.tapped.is_over')}</p>
  if (step.state === 'ended')
    return <p className="step-reading">{say('steps.tapped.taps', { count: face.count })}</p>
  return <Opening face={face} state={step.state} />
}

export default {
  kind: 'tapped',
  isTrial: true,
  Face,
  main: (step, event) => {
    if (event === 'started' && faceIn(step).start === null) return { key: 'steps.tapped.first' }
    if (event === 'tapped') return { key: `steps.tapped.tap_${step.state}` }
    return { key: `steps.tapped.${event ?? 'waits'}` }
  },
  press: (_event, stamp) => ({ stamp }),
  bounceMs: (step) => (step.state === 'running' || step.state === 'over' ? faceIn(step).bounceMs : null),
  dead: (step) => faceIn(step).dead,
  due: (step, now) => {
    const { startedAt, window, restsSince, settling } = faceIn(step)
    if (startedAt !== null && window !== null)
      return { event: 'window_ended', from: startedAt, ms: window * 1000 }
    if (restsSince === null) return null
    // After a restart the hand has long come to rest.
    return restsSince.clock === now.clock
      ? { event: 'settled', from: restsSince, ms: settling * 1000 }
      : { event: 'settled', from: now, ms: 0 }
  },
  isRunning: (step) => faceIn(step).startedAt !== null,
  signals: (step) => {
    const { start, startedAt, window, halfTime, count } = faceIn(step)
    const goes = start !== null && count === 0
    return signalsOf({ isReady: step.state === 'armed', goes, startedAt, lasts: window, halfTime })
  },
  Typed: null,
  cell: null,
} satisfies StepFace
