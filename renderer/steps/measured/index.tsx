import type { StepView } from '../../../protocols/runner/view.ts'
import type { MeasuredFace } from '../../../protocols/steps/measured/face.ts'
import { say } from '../../words/index.ts'
import { Entry } from '../entry.tsx'
import type { FaceProps, StepFace } from '../face.ts'
import { readCell } from '../read-cell.ts'
import { tellUnit, tellValue } from '../tell.ts'

const faceIn = (step: StepView): MeasuredFace => step.face as unknown as MeasuredFace

/** Decimals to show a reading with: as many as the file asks for, else as many as were typed. */
const decimalsOf = (face: MeasuredFace): number =>
  face.decimals ?? (String(face.value ?? '').split('.')[1] ?? '').length

function Face({ step, send }: FaceProps) {
  const face = faceIn(step)
  return (
    <>
      {face.value === null ? null : (
        <p className="step-reading">{tellValue(face.value, decimalsOf(face), face.unit)}</p>
      )}
      <Entry
        key={`${face.value}`}
        label={say(face.value === null ? 'steps.measured.read_now' : 'steps.measured.read_again')}
        unit={tellUnit(face.unit)}
        isWhole={face.decimals === 0}
        onEnter={(value, confirmed) => send('entered', { value, confirmed })}
      />
    </>
  )
}

export default {
  kind: 'measured',
  isTrial: true,
  Face,
  main: (_step, event) => ({ key: `steps.measured.${event ?? 'waits'}` }),
  press: (_event, stamp) => ({ stamp }),
  bounceMs: () => null,
  dead: (step) => faceIn(step).dead,
  due: () => null,
  isRunning: () => false,
  signals: () => [],
  Typed: null,
  cell: {
    read: (typed, face) => {
      const { decimals, plausible } = face as MeasuredFace
      return readCell(typed, { isWhole: decimals === 0, plausible }, (value, confirmed) => ({
        value,
        confirmed,
      }))
    },
    shown: (face) => String((face as MeasuredFace).value ?? ''),
    hint: (face) => tellUnit((face as MeasuredFace).unit),
    hasLetters: () => false,
  },
} satisfies StepFace
