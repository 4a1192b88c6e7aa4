import { useState } from 'react'
import { Button } from '../../parts/button.tsx'
import { Dialog } from '../../parts/dialog.tsx'
import { Field } from '../../parts/field.tsx'
import { say } from '../../words/index.ts'
import type { FaceProps } from '../face.ts'
import { tellRefusal } from '../refusal.tsx'

interface Props extends Pick<FaceProps, 'send'> {
  readonly grade: number
  readonly highest: number | null
  readonly onClose: () => void
}

/** A grade above what was measured takes a reason, and is a deviation. */
export function AboveDialog({ grade, highest, send, onClose }: Props) {
  const [reason, setReason] = useState('')
  const [problem, setProblem] = useState<string | null>(null)
  const give = async (): Promise<void> => {
    if (reason.trim() === '') return setProblem(say('steps.rated.above_missing'))
    const refusal = await send('graded', { grade, reason: reason.trim() })
    if (refusal === null) onClose()
    else setProblem(tellRefusal(refusal))
  }
  return (
    <Dialog
      title={say('steps.rated.above_title', { grade: String(grade) })}
      isOpen
      onClose={onClose}
      actions={
        <>
          <Button look="strong" onPress={() => void give()}>
            {say('steps.rated.above_save', { grade: String(grade) })}
          </Button>
          <Button onPress={onClose}>{say('steps.cancel')}</Button>
        </>
      }
    >
      <Field
        label={say('steps.rated.above_reason')}
        hint={say('steps.rated.above_hint', { highest: String(highest ?? '') })}
        value={reason}
        onChange={setReason}
        takesFocus
        width="wide"
        error={problem}
      />
    </Dialog>
  )
}
