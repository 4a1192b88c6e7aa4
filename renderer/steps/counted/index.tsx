import type { StepView } from '../../../protocols/runner/view.ts'
import type { CountedFace } from '../../../protocols/steps/counted/face.ts'
import { say } from '../../words/index.ts'
import { Cues } from '../cues.tsx'
import { Entry } from '../entry.tsx'
import type { FaceProps, StepFace } from '../face.ts'
import { RunningClock } from '../running-clock.tsx'
import { signalsOf } from '../signals-of.ts'
import { tellUnit, tellValue } from '../tell.ts'

const faceIn = (step: StepView): CountedFace => step.face as unknown as CountedFace

function Counted({ face }: { readonly face: CountedFace }) {
  if (face.count === null) return null
  return (
    <p className="step-reading">
      {tellValue(face.count, 0, face.unit)}
      {face.tapped === 0 || face.tapped === face.count ? null : (
        <span className="step-aside">{say('steps.counted.differs', { tapped: face.tapped })}</span>
      )}
    </p>
  )
}

function Face({ step, showClock, send }: FaceProps) {
  const face = faceIn(step)
  if (face.startedAt !== null)
    return (
      <>
        <RunningClock from={face.startedAt} span={(face.window ?? 0) * 1000} isShown={showClock} />
        <p className="step-aside">{say('steps.counted.tapped', { count: face.tapped })}</p>
      </>
    )
  if (step.state === 'ended' || step.state === 'entered')
    return (
      <>
        <p className="step-state">{say('steps.counted.is_over')}</p>
        <Counted face={face} />
        <Entry
          key={`${face.count}`}
          label={say(face.count === null ? 'steps.counted.count_now' : 'steps.counted.count_again')}
          unit={tellUnit(face.unit)}
          isWhole
          onEnter={(count, confirmed) => send('entered', { count, confirmed })}
        />
      </>
    )
  return (
    <>
      <p className="step-state">{say(`steps.counted.is_${step.state}`)}</p>
      <Cues start={face.start} />
      <p className="step-aside">{say('steps.counted.lasts', { window: tellValue(face.window, 0, 's') })}</p>
    </>
  )
}

export default {
  kind: 'counted',
  isTrial: true,
  Face,
  main: (step, event) => {
    // Once time is over a press is kept and doesn't count: what is wanted is the count.
    if (step.state === 'ended') return { key: 'steps.counted.waits', isWaiting: true }
    return {
      key: event === 'tapped' ? 'steps.counted.tap' : `steps.counted.${event ?? 'waits'}`,
      values: { start: faceIn(step).start.text, unit: tellUnit(faceIn(step).unit) },
    }
  },
  press: (_event, stamp) => ({ stamp }),
  bounceMs: () => null,
  dead: (step) => faceIn(step).dead,
  due: (step) => {
    const { startedAt, window } = faceIn(step)
    return startedAt === null || window === null
      ? null
      : { event: 'window_ended', from: startedAt, ms: window * 1000 }
  },
  isRunning: (step) => faceIn(step).startedAt !== null,
  signals: (step) => {
    const { startedAt, window, halfTime, tapped } = faceIn(step)
    return signalsOf({
      isReady: step.state === 'armed',
      goes: tapped === 0,
      startedAt,
      lasts: window,
      halfTime,
    })
  },
  Typed: null,
  cell: null,
} satisfies StepFace
