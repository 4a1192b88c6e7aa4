import type { StepView } from '../../../protocols/runner/view.ts'
import type { TimedFace } from '../../../protocols/steps/timed/face.ts'
import { say } from '../../words/index.ts'
import { Cues } from '../cues.tsx'
import type { FaceProps, StepFace } from '../face.ts'
import { RunningClock } from '../running-clock.tsx'
import { signalsOf } from '../signals-of.ts'
import { tellUnit, tellValue } from '../tell.ts'
import { Reached } from './reached.tsx'
import { Splits } from './splits.tsx'
import { TypedTime } from './typed-time.tsx'

const faceIn = (step: StepView): TimedFace => step.face as unknown as TimedFace

function tellTime({ time, typed }: TimedFace): string {
  const value = tellValue(time, typed ? 2 : 1, 's')
  return typed ? say('steps.typed', { value }) : say('steps.timed.time', { time: value })
}

function Face({ step, showClock, send }: FaceProps) {
  const face = faceIn(step)
  if (face.startedAt !== null)
    return (
      <>
        <RunningClock from={face.startedAt} span={null} isShown={showClock} />
        <Cues stop={face.stop} />
        <Splits step={step} face={face} send={send} />
      </>
    )
  if (step.state === 'asked') return <Reached face={face} send={send} />
  if (step.state === 'stopped')
    return (
      <p className="step-reading">
        {face.outcome === 'limit'
          ? say('steps.timed.limit', { limit: tellValue(face.limit, 0, 's') })
          : tellTime(face)}
        {face.added === null || face.added === 0 ? null : (
          <span className="step-aside">
            {say('steps.timed.added', { added: tellValue(face.added, 1, 's') })}
          </span>
        )}
        {face.reached.map(({ name, text, count }) =>
          count === null ? null : (
            <span key={name} className="step-aside">
              {say('steps.timed.reached', { what: text ?? tellUnit(name), count })}
            </span>
          ),
        )}
      </p>
    )
  return (
    <>
      <p className="step-state">{say(`steps.timed.is_${step.state}`)}</p>
      <Cues start={face.start} stop={face.stop} />
      {face.limit === null ? null : (
        <p className="step-aside">{say('steps.timed.ends_at', { limit: tellValue(face.limit, 0, 's') })}</p>
      )}
    </>
  )
}

export default {
  kind: 'timed',
  isTrial: true,
  Face,
  main: (step, event) => ({
    key: `steps.timed.${event ?? (step.state === 'asked' ? 'reached_waits' : 'waits')}`,
    values: { start: faceIn(step).start.text, stop: faceIn(step).stop.text },
  }),
  press: (_event, stamp) => ({ stamp }),
  bounceMs: () => null,
  dead: (step) => faceIn(step).dead,
  due: (step) => {
    const { startedAt, limit } = faceIn(step)
    return startedAt === null || limit === null
      ? null
      : { event: 'limit_reached', from: startedAt, ms: limit * 1000 }
  },
  isRunning: (step) => faceIn(step).startedAt !== null,
  signals: (step) => {
    const { startedAt, limit, halfTime } = faceIn(step)
    return signalsOf({ isReady: step.state === 'armed', goes: false, startedAt, lasts: limit, halfTime })
  },
  Typed: TypedTime,
  cell: null,
} satisfies StepFace
