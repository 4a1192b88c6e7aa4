import { useState } from 'react'
import type { KitFace } from '../../../protocols/steps/kit/face.ts'
import type { StepView } from '../../../protocols/runner/view.ts'
import { Button } from '../../parts/button.tsx'
import { Dialog } from '../../parts/dialog.tsx'
import { Field } from '../../parts/field.tsx'
import { say } from '../../words/index.ts'
import type { FaceProps, StepFace } from '../face.ts'
import { shown } from '../shown.ts'
import './kit.css'

type Problems = Readonly<Record<string, string>>

const piecesOf = (step: StepView): KitFace['pieces'] => (step.face as unknown as KitFace).pieces

interface ProblemDialogProps {
  readonly text: string
  readonly start: string
  readonly onSave: (problem: string) => void
  readonly onClose: () => void
}

function ProblemDialog({ text, start, onSave, onClose }: ProblemDialogProps) {
  const [typed, setTyped] = useState(start)
  return (
    <Dialog
      title={say('steps.kit.problem_title', { piece: text })}
      isOpen
      onClose={onClose}
      actions={
        <>
          <Button look="strong" onPress={() => onSave(typed.trim())}>
            {say('steps.kit.problem_save')}
          </Button>
          <Button onPress={onClose}>{say('steps.cancel')}</Button>
        </>
      }
    >
      <Field
        label={say('steps.kit.problem_what')}
        hint={say('steps.kit.problem_hint')}
        value={typed}
        onChange={setTyped}
        takesFocus
        width="wide"
      />
    </Dialog>
  )
}

/** What the check comes to: every piece is ticked unless something was told about it. */
function checked(pieces: KitFace['pieces'], problems: Problems) {
  const told = pieces.filter((piece) => problems[piece.id])
  return {
    ticked: pieces.filter((piece) => !told.includes(piece)).map((piece) => piece.id),
    problems: told.map((piece) => ({ piece: piece.id, text: problems[piece.id] })),
  }
}

function Piece({
  piece,
  problem,
  onTell,
}: {
  piece: KitFace['pieces'][number]
  problem: string
  onTell: () => void
}) {
  return (
    <li className="kit-piece">
      <span>
        <span className="kit-text">{piece.text}</span>
        {piece.check === null ? null : <span className="kit-check">{piece.check}</span>}
        {problem === '' ? null : (
          <span className="kit-problem">{say('steps.kit.problem', { text: problem })}</span>
        )}
      </span>
      <Button look="quiet" onPress={onTell}>
        {say('steps.kit.tell')}
        <span className="unseen">{piece.text}</span>
      </Button>
    </li>
  )
}

function Face({ step, prepare }: FaceProps) {
  const [problems, setProblems] = useState<Problems>({})
  const [asking, setAsking] = useState<string | null>(null)
  const pieces = piecesOf(step)
  const asked = pieces.find((piece) => piece.id === asking)
  const keep = (id: string, problem: string): void => {
    const now = { ...problems, [id]: problem }
    setProblems(now)
    setAsking(null)
    prepare(checked(pieces, now))
  }
  return (
    <>
      <ul className="kit">
        {pieces.map((piece) => (
          <Piece
            key={piece.id}
            piece={piece}
            problem={problems[piece.id] ?? ''}
            onTell={() => setAsking(piece.id)}
          />
        ))}
      </ul>
      {asked === undefined ? null : (
        <ProblemDialog
          text={asked.text}
          start={problems[asked.id] ?? ''}
          onClose={() => setAsking(null)}
          onSave={(problem) => keep(asked.id, problem)}
        />
      )}
    </>
  )
}

export default {
  ...shown,
  kind: 'kit',
  Face,
  main: (step) => ({ key: 'steps.kit.main', values: { count: piecesOf(step).length } }),
  press: (_event, stamp, prepared, step) => ({ ...checked(piecesOf(step), {}), ...prepared, stamp }),
} satisfies StepFace
