import { useEffect, useId, useRef } from 'react'
import { FieldError, Input, Label, Text, TextArea, TextField } from 'react-aria-components'
import './field.css'

export interface FieldProps {
  readonly label: string
  readonly value: string
  readonly onChange: (value: string) => void
  readonly hint?: string | undefined
  /** What is wrong and how to mend it; shown in place and read with the field. */
  readonly error?: string | null | undefined
  readonly isRequired?: boolean
  readonly isMultiline?: boolean
  readonly maxLength?: number
  /** `short` for numbers and codes, `wide` for sentences. */
  readonly width?: 'short' | 'middle' | 'wide'
  /** `number` brings up a number pad; what is typed stays text until `readNumber` reads it. */
  readonly kind?: 'text' | 'number' | 'search'
  /** A unit or the like, after the box. */
  readonly after?: string
  readonly takesFocus?: boolean
  readonly onBlur?: () => void
}

export function Field(props: FieldProps) {
  const after = useId()
  const box = useRef<HTMLInputElement>(null)
  const takesFocus = props.takesFocus ?? false
  useEffect(() => {
    if (takesFocus) box.current?.focus()
  }, [takesFocus])
  const { width = 'middle', kind = 'text' } = props
  const input = `field-input field-input-${width}`
  return (
    <TextField
      className="field"
      value={props.value}
      onChange={props.onChange}
      isInvalid={Boolean(props.error)}
      isRequired={props.isRequired ?? false}
      validationBehavior="aria"
      maxLength={props.maxLength ?? 500}
      type={kind === 'search' ? 'search' : 'text'}
      autoComplete="off"
      {...(props.onBlur ? { onBlur: props.onBlur } : {})}
      {...(props.after ? { 'aria-describedby': after } : {})}
    >
      <Label className="field-label">{props.label}</Label>
      {props.hint ? (
        <Text slot="description" className="field-hint">
          {props.hint}
        </Text>
      ) : null}
      <div className="field-line">
        {props.isMultiline ? (
          <TextArea className={`${input} field-area`} rows={3} />
        ) : (
          <Input
            ref={box}
            className={input}
            inputMode={kind === 'number' ? 'decimal' : 'text'}
            spellCheck="false"
          />
        )}
        {props.after ? (
          <span id={after} className="field-after">
            {props.after}
          </span>
        ) : null}
      </div>
      <FieldError className="field-error">{props.error}</FieldError>
    </TextField>
  )
}
