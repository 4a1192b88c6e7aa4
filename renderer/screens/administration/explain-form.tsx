import { useState } from 'react'
import type { EventBody } from '../../../protocols/runner/events.ts'
import type { AdministrationView } from '../../../protocols/runner/view.ts'
import { Choice } from '../../parts/choice.tsx'
import { Field } from '../../parts/field.tsx'
import { say } from '../../words/index.ts'
import { type FormProps, FormShell } from './forms.tsx'

interface Props extends FormProps {
  readonly trial: string
  readonly reasons: AdministrationView['voidReasons']
}

/** Why a trial does not count: asked once it is over, due before the end of the test. */
export function ExplainForm({ trial, reasons, ...props }: Props) {
  const [happening, setHappening] = useState<string | null>(null)
  const [remark, setRemark] = useState('')
  const body = (): EventBody | { readonly missing: string } =>
    happening === null
      ? { missing: say('administration.choose_first') }
      : { kind: 'explained', trial, happening, remark: remark.trim() }
  return (
    <FormShell
      {...props}
      title={say('administration.explain.title')}
      save={say('administration.save')}
      cancel={say('administration.explain.later')}
      body={body}
    >
      <Choice
        label={say('administration.explain.why')}
        options={reasons.map(({ name, seen }) => ({ id: name, label: seen }))}
        value={happening}
        onChange={setHappening}
      />
      <Field
        label={say('administration.more')}
        value={remark}
        onChange={setRemark}
        width="wide"
        maxLength={1000}
      />
    </FormShell>
  )
}
