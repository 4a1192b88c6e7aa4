import { useState } from 'react'
import type { StepView } from '../../../protocols/runner/view.ts'
import type { RatedFace } from '../../../protocols/steps/rated/face.ts'
import { say } from '../../words/index.ts'
import type { FaceProps, StepFace } from '../face.ts'
import { readCell } from '../read-cell.ts'
import { Picks } from '../picks.tsx'
import { AboveDialog } from './above-dialog.tsx'

const faceIn = (step: StepView): RatedFace => step.face as unknown as RatedFace

/** How far up one may go, where the file says so. */
function Highest({ face }: { readonly face: RatedFace }) {
  if (face.highestUnknown) return <p className="step-aside">{say('steps.rated.highest_unknown')}</p>
  return face.grades.some(({ above }) => above) ? (
    <p className="step-aside">{say('steps.rated.highest', { highest: String(face.highest) })}</p>
  ) : null
}

function Face({ step, send }: FaceProps) {
  const face = faceIn(step)
  const [above, setAbove] = useState<number | null>(null)
  if (face.grades.length === 0) return <p className="step-state">{say('steps.rated.none_open')}</p>
  const pick = async (id: string): Promise<void> => {
    const grade = Number(id)
    if (face.grades.some((each) => each.grade === grade && each.above)) return setAbove(grade)
    await send('graded', { grade, reason: null })
  }
  return (
    <>
      <Picks
        label={say(face.grade === null ? 'steps.rated.grade_now' : 'steps.rated.grade_again')}
        step={step}
        picks={face.grades.map((each) => ({
          id: String(each.grade),
          sign: String(each.grade),
          text: each.text,
          aside: each.above ? say('steps.rated.above') : null,
        }))}
        picked={face.grade === null ? null : String(face.grade)}
        onPick={(id) => void pick(id)}
      />
      <Highest face={face} />
      {above === null ? null : (
        <AboveDialog grade={above} highest={face.highest} send={send} onClose={() => setAbove(null)} />
      )}
    </>
  )
}

export default {
  kind: 'rated',
  isTrial: true,
  Face,
  main: (_step, event) => ({ key: `steps.rated.${event ?? 'waits'}` }),
  press: (_event, stamp) => ({ stamp }),
  bounceMs: () => null,
  dead: (step) => faceIn(step).dead,
  due: () => null,
  isRunning: () => false,
  signals: () => [],
  Typed: null,
  cell: {
    read: (typed) =>
      readCell(typed, { isWhole: true, plausible: null }, (grade) => ({ grade, reason: null })),
    shown: (face) => String((face as RatedFace).grade ?? ''),
    hint: (face) => (face as RatedFace).grades.map(({ grade, text }) => `${grade} ${text}`).join(' · '),
    hasLetters: () => false,
  },
} satisfies StepFace
