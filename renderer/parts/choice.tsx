import { FieldError, Label, Radio, RadioGroup, Text } from 'react-aria-components'
import './choice.css'

interface ChoiceOption<T extends string> {
  readonly id: T
  readonly label: string
  readonly detail?: string | undefined
  /** The key that answers with it inside `AnswerKeys`, as `KeyboardEvent.key` names it. */
  readonly answerKey?: string | undefined
}

export interface ChoiceProps<T extends string> {
  readonly label: string
  readonly options: readonly ChoiceOption<T>[]
  /** Null: nothing chosen yet. */
  readonly value: T | null
  readonly onChange: (value: T) => void
  readonly hint?: string | undefined
  readonly error?: string | null | undefined
  /** Side by side where there is room. */
  readonly isRow?: boolean
  readonly isLarge?: boolean
}

/** One of a few, all in sight. Nothing is chosen beforehand unless the caller says so. */
export function Choice<T extends string>(props: ChoiceProps<T>) {
  return (
    <RadioGroup
      className="choice"
      value={props.value}
      onChange={(id) => {
        const option = props.options.find((each) => each.id === id)
        if (option) props.onChange(option.id)
      }}
      isInvalid={Boolean(props.error)}
      validationBehavior="aria"
    >
      <Label className={props.isLarge ? 'choice-label choice-label-large' : 'choice-label'}>
        {props.label}
      </Label>
      {props.hint ? (
        <Text slot="description" className="field-hint">
          {props.hint}
        </Text>
      ) : null}
      <div className={props.isRow ? 'choice-options choice-row' : 'choice-options'}>
        {props.options.map((option) => (
          <Radio
            key={option.id}
            value={option.id}
            className="choice-option"
            data-answer-key={option.answerKey}
          >
            <span className="choice-mark" aria-hidden="true">
              {option.answerKey === option.label ? null : option.answerKey}
            </span>
            <span>
              {option.label}
              {option.detail ? <span className="choice-detail">{option.detail}</span> : null}
            </span>
          </Radio>
        ))}
      </div>
      <FieldError className="field-error">{props.error}</FieldError>
    </RadioGroup>
  )
}
