import { Choice } from '../../parts/choice.tsx'
import { DateField } from '../../parts/date-field.tsx'
import { Field } from '../../parts/field.tsx'
import { say } from '../../words/index.ts'
import type { ClearanceDraft, Problems } from './draft.ts'

export interface ClearancePartProps {
  readonly ask: string
  readonly why: string | null
  /** A restriction is known to be there; what is asked is whether it still holds. */
  readonly about: 'precaution' | 'restriction'
  readonly value: ClearanceDraft
  readonly onChange: (value: ClearanceDraft) => void
  readonly field: string
  readonly problems: Problems
}

const ANSWERS = ['not_present', 'cleared', 'not_given', 'not_known'] as const

/** One precaution or restriction: four answers, none of them chosen beforehand. */
export function ClearancePart(props: ClearancePartProps) {
  const { value, onChange, field, problems, about } = props
  return (
    <div className="stack">
      <Choice
        isRow
        label={props.ask}
        hint={props.why ?? undefined}
        value={value.answer}
        onChange={(answer) => onChange({ ...value, answer })}
        error={value.answer === null ? problems[field] : null}
        options={ANSWERS.map((id, index) => ({
          id,
          label: say(`starting.clearance.${about}.${id}`),
          answerKey: String(index + 1),
        }))}
      />
      {value.answer === 'cleared' ? (
        <div className="starting-inner">
          <Field
            label={say('starting.clearance.by')}
            value={value.by}
            maxLength={200}
            onChange={(by) => onChange({ ...value, by })}
            error={problems[`${field}.by`]}
          />
          <DateField
            label={say('starting.clearance.on')}
            value={value.on}
            onChange={(on) => onChange({ ...value, on })}
            error={problems[`${field}.on`]}
          />
        </div>
      ) : null}
    </div>
  )
}
