import { useId } from 'react'
import { Input, Label, TextField } from 'react-aria-components'
import { say } from '../words/index.ts'
import type { DateDraft } from './read-date.ts'
import './date-field.css'

export interface DateFieldProps {
  readonly label: string
  readonly value: DateDraft
  readonly onChange: (value: DateDraft) => void
  readonly hint?: string | undefined
  readonly error?: string | null | undefined
}

const PARTS = ['day', 'month', 'year'] as const

/** Day, month and year typed apart, so that no order has to be guessed; `readDate` reads what was typed. */
export function DateField({ label, value, onChange, hint, error }: DateFieldProps) {
  const id = useId()
  const hints = [hint ? `${id}-hint` : '', error ? `${id}-error` : ''].filter(Boolean).join(' ')
  return (
    <fieldset className="field" {...(hints ? { 'aria-describedby': hints } : {})}>
      <legend className="field-label">{label}</legend>
      {hint ? (
        <p className="field-hint" id={`${id}-hint`}>
          {hint}
        </p>
      ) : null}
      <div className="date-parts">
        {PARTS.map((part) => (
          <TextField
            key={part}
            className="date-part"
            value={value[part]}
            onChange={(typed) => onChange({ ...value, [part]: typed })}
            isInvalid={Boolean(error)}
            validationBehavior="aria"
            maxLength={part === 'year' ? 4 : 2}
            autoComplete="off"
            {...(hints ? { 'aria-describedby': hints } : {})}
          >
            <Label className="date-part-label">{say(`parts.date.${part}`)}</Label>
            <Input className={`field-input date-input-${part}`} inputMode="numeric" />
          </TextField>
        ))}
      </div>
      {error ? (
        <p className="field-error" id={`${id}-error`}>
          {error}
        </p>
      ) : null}
    </fieldset>
  )
}
