import { Choice } from '../../parts/choice.tsx'
import { DateField } from '../../parts/date-field.tsx'
import { Field } from '../../parts/field.tsx'
import { say } from '../../words/index.ts'
import type { BirthDraft, Problems } from './draft.ts'

export interface BirthPartProps {
  readonly birth: BirthDraft
  readonly onChange: (birth: BirthDraft) => void
  readonly problems: Problems
}

const KNOWN = ['date', 'told', 'no'] as const

/** When somebody was born, as exactly as it is known and no more. */
export function BirthPart({ birth, onChange, problems }: BirthPartProps) {
  return (
    <div className="stack">
      <Choice
        isRow
        label={say('profile.birth')}
        value={birth.known}
        onChange={(known) => onChange({ ...birth, known })}
        options={KNOWN.map((id) => ({ id, label: say(`profile.birth.${id}`) }))}
      />
      {birth.known === 'date' ? (
        <DateField
          label={say('profile.birth.when')}
          hint={say('profile.birth.when.hint')}
          value={birth.date}
          onChange={(date) => onChange({ ...birth, date })}
          error={problems.birth}
        />
      ) : null}
      {birth.known === 'told' ? (
        <>
          <Field
            kind="number"
            width="short"
            label={say('profile.birth.years')}
            value={birth.years}
            onChange={(years) => onChange({ ...birth, years })}
            error={problems.years}
          />
          <DateField
            label={say('profile.birth.on')}
            value={birth.on}
            onChange={(on) => onChange({ ...birth, on })}
            error={problems.toldOn}
          />
        </>
      ) : null}
    </div>
  )
}
