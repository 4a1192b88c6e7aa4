import type { ReactNode } from 'react'
import { say } from '../words/index.ts'
import { Button } from './button.tsx'
import './form-foot.css'

export interface FormFootProps {
  readonly label: string
  readonly onDone: () => void
  readonly isBusy: boolean
  /** How many fields have a problem, since the last try. */
  readonly problems: number
  /** What stands in the way beside them, such as a fault: kept in sight above the button. */
  readonly children?: ReactNode
}

/** Ends a form: one button, and how much still stands in its way. */
export function FormFoot({ label, onDone, isBusy, problems, children }: FormFootProps) {
  return (
    <div className="form-foot">
      {children ? <div className="form-foot-notices">{children}</div> : null}
      <Button look="strong" isLarge onPress={onDone} isDisabled={isBusy}>
        {label}
      </Button>
      <output className="form-foot-problems">
        {problems > 0 ? say('parts.form.problems', { count: problems }) : ''}
      </output>
    </div>
  )
}
