import { say } from '../words/index.ts'
import { Button } from './button.tsx'
import './form-foot.css'

export interface FormFootProps {
  readonly label: string
  readonly onDone: () => void
  readonly isBusy: boolean
  /** How many fields have a problem, since the last try. */
  readonly problems: number
}

/** Ends a form: one button, and how much still stands in its way. */
export function FormFoot({ label, onDone, isBusy, problems }: FormFootProps) {
  return (
    <div className="form-foot">
      <Button look="strong" isLarge onPress={onDone} isDisabled={isBusy}>
        {label}
      </Button>
      <output className="form-foot-problems">
        {problems > 0 ? say('parts.form.problems', { count: problems }) : ''}
      </output>
    </div>
  )
}
