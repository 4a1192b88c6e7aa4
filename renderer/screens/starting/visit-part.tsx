import { useState } from 'react'
import { Button } from '../../parts/button.tsx'
import { Choice } from '../../parts/choice.tsx'
import { Field } from '../../parts/field.tsx'
import { say } from '../../words/index.ts'
import type { Problems, VisitDraft } from './draft.ts'

export interface VisitPartProps {
  readonly visit: VisitDraft
  readonly onChange: (visit: VisitDraft) => void
  readonly problems: Problems
  /** True when it was asked before in this visit: then it is only shown, to be changed on request. */
  readonly wasAsked: boolean
}

const WORN = ['worn', 'not_worn', 'none', 'unknown'] as const
const TEXTS = ['splint', 'seat', 'helper', 'sinceDose'] as const

/** How the client sits here today; asked once a visit. */
export function VisitPart({ visit, onChange, problems, wasAsked }: VisitPartProps) {
  const [isOpen, setOpen] = useState(!wasAsked)
  const change = (part: Partial<VisitDraft>) => onChange({ ...visit, ...part })
  if (!isOpen) {
    return (
      <div className="stack stack-tight">
        <p>{summary(visit)}</p>
        <div>
          <Button look="quiet" onPress={() => setOpen(true)}>
            {say('starting.visit.change')}
          </Button>
        </div>
      </div>
    )
  }
  return (
    <div className="stack">
      <div className="starting-visit">
        {TEXTS.map((field) => (
          <Field
            key={field}
            label={say(`starting.visit.${field}`)}
            hint={say(`starting.visit.${field}.hint`)}
            value={visit[field]}
            maxLength={field === 'splint' ? 300 : 200}
            onChange={(text) => change({ [field]: text })}
          />
        ))}
      </div>
      <div className="row starting-checks">
        {(['glasses', 'hearingAid'] as const).map((field) => (
          <Choice
            key={field}
            isRow
            label={say(`starting.visit.${field}`)}
            value={visit[field]}
            onChange={(worn) => change({ [field]: worn })}
            options={WORN.map((id) => ({ id, label: say(`starting.visit.worn.${id}`) }))}
          />
        ))}
        <Field
          kind="number"
          width="short"
          label={say('starting.visit.tiredness')}
          hint={say('starting.visit.tiredness.hint')}
          value={visit.tiredness}
          onChange={(tiredness) => change({ tiredness })}
          error={problems.tiredness}
        />
      </div>
    </div>
  )
}

function summary(visit: VisitDraft): string {
  const texts = TEXTS.filter((field) => visit[field]).map((field) =>
    say('starting.visit.summary', { what: say(`starting.visit.${field}`), text: visit[field] }),
  )
  const worn = (['glasses', 'hearingAid'] as const)
    .filter((field) => visit[field] !== 'unknown')
    .map((field) =>
      say('starting.visit.summary', {
        what: say(`starting.visit.${field}`),
        text: say(`starting.visit.worn.${visit[field]}`),
      }),
    )
  const tired = visit.tiredness
    ? [say('starting.visit.summary', { what: say('starting.visit.tiredness'), text: visit.tiredness })]
    : []
  return [...texts, ...worn, ...tired].join('; ') || say('starting.visit.nothing')
}
