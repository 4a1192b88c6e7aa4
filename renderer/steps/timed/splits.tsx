import type { StepView } from '../../../protocols/runner/view.ts'
import type { TimedFace } from '../../../protocols/steps/timed/face.ts'
import { stampOf } from '../../input/clock.ts'
import { say } from '../../words/index.ts'
import type { FaceProps } from '../face.ts'
import { Picks } from '../picks.tsx'

interface Props extends Pick<FaceProps, 'send'> {
  readonly step: StepView
  readonly face: TimedFace
}

/** Moments on the way, each stamped once by its own digit while the clock runs on. */
export function Splits({ step, face, send }: Props) {
  if (face.splits.length === 0) return null
  return (
    <Picks
      label={say('steps.timed.splits')}
      step={step}
      picks={face.splits.map(({ name, text, seconds }) => ({
        id: name,
        text,
        aside: seconds === null ? null : say('steps.timed.split_stamped'),
      }))}
      picked={face.splits.findLast(({ seconds }) => seconds !== null)?.name ?? null}
      onPick={(what, press) => void send('split', { what, stamp: stampOf(press, performance.now()) })}
    />
  )
}
