import type { EventBody } from '../../../../protocols/runner/events.ts'
import type { Trial } from '../../../../protocols/runner/view.ts'
import { Choice } from '../../../parts/choice.tsx'
import { Field } from '../../../parts/field.tsx'
import { readNumber } from '../../../parts/read-number.ts'
import { say } from '../../../words/index.ts'
import { tellReadings, tellSide, tellUnit } from '../../../steps/tell.ts'

export interface ValueDraft {
  /** `<trial> <column>` */
  readonly which: string | null
  readonly typed: string
  /** True once it was asked for as it stands here: saving it again confirms it. */
  readonly isDoubted: boolean
}

export const NO_VALUE: ValueDraft = { which: null, typed: '', isDoubted: false }

interface Entry {
  readonly id: string
  readonly trial: Trial
  readonly column: string
  readonly label: string
}

/** Every value that may be put right: those of trials that stand, in the order they were given. */
function entries(trials: readonly Trial[]): readonly Entry[] {
  return trials.flatMap((trial, index) =>
    trial.status !== 'standing'
      ? []
      : tellReadings(trial).map(({ column, words }) => ({
          id: `${trial.id} ${column}`,
          trial,
          column,
          label: say('administration.put_right.entry', {
            number: index + 1,
            side: tellSide(trial.place) || 'none',
            value: words,
          }),
        })),
  )
}

const WIDEST = { least: 0, most: 1_000_000 }

export function valueBody(
  draft: ValueDraft,
  trials: readonly Trial[],
  reason: string,
): EventBody | { readonly problem: string } {
  const entry = entries(trials).find((each) => each.id === draft.which)
  if (entry === undefined) return { problem: say('administration.put_right.which_missing') }
  const { trial, column } = entry
  if (typeof trial.readings[column]?.value === 'string') {
    const value = draft.typed.trim()
    if (value === '') return { problem: say('administration.put_right.value_missing') }
    return { kind: 'corrected', trial: trial.id, column, value, reason }
  }
  const read = readNumber(draft.typed, WIDEST)
  if (!('number' in read)) return { problem: say(`parts.number.${read.problem}`, WIDEST) }
  if (read.number === null) return { problem: say('administration.put_right.value_missing') }
  return {
    kind: 'corrected',
    trial: trial.id,
    column,
    value: read.number,
    confirmed: draft.isDoubted,
    reason,
  }
}

interface Props {
  readonly trials: readonly Trial[]
  readonly value: ValueDraft
  readonly onChange: (value: ValueDraft) => void
}

/** What should stand there: one of the options that were put, words, or a number with its unit. */
function ShouldBe({
  entry: { trial, column },
  typed,
  onType,
}: {
  readonly entry: Entry
  readonly typed: string
  readonly onType: (typed: string) => void
}) {
  const reading = trial.readings[column]
  const label = say('administration.put_right.should_be')
  if (reading?.options !== undefined) {
    return (
      <Choice
        label={label}
        options={Object.entries(reading.options).map(([id, words]) => ({ id, label: words }))}
        value={typed === '' ? null : typed}
        onChange={onType}
      />
    )
  }
  if (typeof reading?.value === 'string') {
    return <Field label={label} value={typed} onChange={onType} width="wide" />
  }
  return (
    <Field
      label={label}
      value={typed}
      onChange={onType}
      kind="number"
      width="short"
      after={tellUnit(reading?.unit ?? '1')}
    />
  )
}

export function ValueFields({ trials, value, onChange }: Props) {
  const all = entries(trials)
  const chosen = all.find((entry) => entry.id === value.which)
  if (all.length === 0) return <p>{say('administration.put_right.no_values')}</p>
  return (
    <>
      <Choice
        label={say('administration.put_right.which')}
        options={all.map(({ id, label }) => ({ id, label }))}
        value={value.which}
        onChange={(which) => onChange({ which, typed: '', isDoubted: false })}
      />
      {chosen === undefined ? null : (
        <ShouldBe
          entry={chosen}
          typed={value.typed}
          onType={(typed) => onChange({ ...value, typed, isDoubted: false })}
        />
      )}
    </>
  )
}
