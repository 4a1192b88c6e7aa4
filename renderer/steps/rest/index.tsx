import { useState } from 'react'
import type { StepView } from '../../../protocols/runner/view.ts'
import type { RestFace } from '../../../protocols/steps/rest/face.ts'
import { Button } from '../../parts/button.tsx'
import { Dialog } from '../../parts/dialog.tsx'
import { Field } from '../../parts/field.tsx'
import { say } from '../../words/index.ts'
import type { FaceProps, StepFace } from '../face.ts'
import { RunningClock } from '../running-clock.tsx'
import { tellRefusal } from '../refusal.tsx'
import { tellValue } from '../tell.ts'

const faceIn = (step: StepView): RestFace => step.face as unknown as RestFace

function CutDialog({ send, onClose }: Pick<FaceProps, 'send'> & { readonly onClose: () => void }) {
  const [reason, setReason] = useState('')
  const [problem, setProblem] = useState<string | null>(null)
  const cut = async (): Promise<void> => {
    if (reason.trim() === '') return setProblem(say('steps.rest.cut_reason_missing'))
    const refusal = await send('cut', { reason: reason.trim() })
    if (refusal === null) onClose()
    else setProblem(tellRefusal(refusal))
  }
  return (
    <Dialog
      title={say('steps.rest.cut_title')}
      isOpen
      onClose={onClose}
      actions={
        <>
          <Button look="strong" onPress={() => void cut()}>
            {say('steps.rest.cut_save')}
          </Button>
          <Button onPress={onClose}>{say('steps.cancel')}</Button>
        </>
      }
    >
      <Field
        label={say('steps.rest.cut_reason')}
        hint={say('steps.rest.cut_hint')}
        value={reason}
        onChange={setReason}
        takesFocus
        width="wide"
        error={problem}
      />
    </Dialog>
  )
}

/** A rest's clock is always seen: nobody measures by it, and the client may know how long it lasts. */
function Face({ step, send }: FaceProps) {
  const [cutting, setCutting] = useState(false)
  const face = faceIn(step)
  return (
    <>
      <p className="step-state">{say('steps.rest.is_resting', { least: tellValue(face.least, 0, 's') })}</p>
      {face.from === null ? null : <RunningClock from={face.from} span={face.least * 1000} isShown />}
      <div>
        <Button onPress={() => setCutting(true)}>{say('steps.rest.cut')}</Button>
      </div>
      {cutting ? <CutDialog send={send} onClose={() => setCutting(false)} /> : null}
    </>
  )
}

export default {
  kind: 'rest',
  isTrial: false,
  Face,
  main: () => ({ key: 'steps.rest.waits' }),
  press: () => null,
  bounceMs: () => null,
  dead: () => null,
  due: (step, now) => {
    const { from, least } = faceIn(step)
    return from === null ? { event: 'began', from: now, ms: 0 } : { event: 'over', from, ms: least * 1000 }
  },
  isRunning: () => false,
  signals: () => [],
  Typed: null,
  cell: null,
} satisfies StepFace
