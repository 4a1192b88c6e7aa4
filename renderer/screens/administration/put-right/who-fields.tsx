import type { EventBody } from '../../../../protocols/runner/events.ts'
import { useClinic } from '../../../app/session.tsx'
import { showDate } from '../../../app/dates.ts'
import { Choice } from '../../../parts/choice.tsx'
import { DateField } from '../../../parts/date-field.tsx'
import { type DateDraft, NO_DATE, readDate } from '../../../parts/read-date.ts'
import { say } from '../../../words/index.ts'

export interface WhoDraft {
  readonly examiner: { readonly id: string; readonly name: string } | null
  readonly on: DateDraft
  /** The day on which this is put right: no test can have been given later. */
  readonly today: string | null
}

export const NO_WHO: WhoDraft = { examiner: null, on: NO_DATE, today: null }

const EARLIEST = '1950-01-01'

export function whoBody(draft: WhoDraft, reason: string): EventBody | { readonly problem: string } {
  const read = readDate(draft.on, { earliest: EARLIEST, latest: draft.today })
  if ('problem' in read) return { problem: say(`administration.put_right.date_${read.problem}`) }
  if (read.known === 'year' || read.known === 'month')
    return { problem: say('administration.put_right.date_whole') }
  const on = read.known === 'date' ? read.date : null
  if (draft.examiner === null && on === null) return { problem: say('administration.put_right.who_missing') }
  return { kind: 'reattributed', examiner: draft.examiner, on, reason }
}

interface Props {
  readonly examiner: string
  readonly on: string
  readonly value: WhoDraft
  readonly onChange: (value: WhoDraft) => void
}

export function WhoFields({ examiner, on, value, onChange }: Props) {
  const { users, today } = useClinic()
  return (
    <>
      <p>{say('administration.put_right.who_now', { examiner, day: showDate(on) })}</p>
      <Choice
        label={say('administration.put_right.examiner')}
        options={users.map(({ id, name }) => ({ id, label: name }))}
        value={value.examiner?.id ?? null}
        onChange={(id) => {
          const user = users.find((each) => each.id === id)
          onChange({ ...value, examiner: user === undefined ? null : { id: user.id, name: user.name } })
        }}
      />
      <DateField
        label={say('administration.put_right.date')}
        hint={say('administration.put_right.date_hint')}
        value={value.on}
        onChange={(date) => onChange({ ...value, on: date, today })}
      />
    </>
  )
}
