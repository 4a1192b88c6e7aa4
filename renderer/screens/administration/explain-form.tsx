import { useState } from 'react'
import type { AdministrationView } from '../../../protocols/runner/view.ts'
import { Button } from '../../parts/button.tsx'
import { Dialog } from '../../parts/dialog.tsx'
import { Field } from '../../parts/field.tsx'
import { say } from '../../words/index.ts'
import type { FormProps } from './forms.tsx'
import { digitKey, useDigits } from './use-digits.ts'

interface Props extends FormProps {
  readonly trial: string
  readonly reasons: AdministrationView['voidReasons']
}

/** Why a trial does not count: asked once it is over, due before the end of the test. */
export function ExplainForm({ trial, reasons, onAct, onClose }: Props) {
  const [remark, setRemark] = useState('')
  const [problem, setProblem] = useState<string | null>(null)
  const choose = async (index: number): Promise<void> => {
    const reason = reasons[index]
    if (reason === undefined) return
    const body = { kind: 'explained', trial, happening: reason.name, remark: remark.trim() } as const
    const refused = await onAct(body)
    if (refused === null) onClose()
    else setProblem(refused)
  }
  useDigits((index) => void choose(index))
  return (
    <Dialog
      title={say('administration.explain.title')}
      isOpen
      onClose={onClose}
      actions={<Button onPress={onClose}>{say('administration.explain.later')}</Button>}
    >
      <ul className="giving-reasons">
        {reasons.map(({ name, seen }, index) => (
          <li key={name}>
            <Button onPress={() => void choose(index)} {...digitKey(index)}>
              {seen}
            </Button>
          </li>
        ))}
      </ul>
      <Field
        label={say('administration.explain.more')}
        value={remark}
        onChange={setRemark}
        width="wide"
        maxLength={1000}
      />
      <p role="alert" className="giving-problem">
        {problem}
      </p>
    </Dialog>
  )
}
