import { useState } from 'react'
import type { KitPiece } from '../../../protocols/runner/events.ts'
import { FaultNotice } from '../../app/fault-notice.tsx'
import { useDoing, useHost } from '../../app/host.tsx'
import { Button } from '../../parts/button.tsx'
import { Choice } from '../../parts/choice.tsx'
import { DateField } from '../../parts/date-field.tsx'
import { Field } from '../../parts/field.tsx'
import { focusFirstProblem } from '../../parts/focus-first-problem.ts'
import { say } from '../../words/index.ts'
import { type Card, conditionTitle } from './draft.ts'
import { buildsOf, NO_PIECE, type PieceDraft, readPiece } from './piece-draft.ts'

export interface RegisterPieceProps {
  readonly item: Card['kit'][number]
  readonly card: Card
  /** Conditions that another piece in use has settled. */
  readonly settled: ReadonlySet<string>
  readonly protocol: string
  readonly today: string
  readonly problem: string | undefined
  readonly onRegistered: (piece: KitPiece) => void
}

/** Registers one piece of kit, once: what the clinic calls it, how it is built, when it was checked. */
export function RegisterPiece(props: RegisterPieceProps) {
  const { item, card, settled, protocol, today, problem, onRegistered } = props
  const builds = buildsOf(card, settled)
  const { call } = useHost()
  const { run, fault, isBusy } = useDoing()
  const [draft, setDraft] = useState(NO_PIECE)
  const [problems, setProblems] = useState<Readonly<Record<string, string>>>({})
  const register = () => {
    const read = readPiece(draft, { builds, item: item.id, today })
    setProblems('problems' in read ? read.problems : {})
    if ('problems' in read) return focusFirstProblem()
    void run(async () => onRegistered(await call('kit.register', { protocol, piece: read.piece })))
  }
  return (
    <fieldset className="starting-piece">
      <legend className="starting-piece-title">{say('starting.kit.register')}</legend>
      <p>{item.text}</p>
      <p className="soft">{say('starting.kit.register.hint')}</p>
      <PieceFields
        builds={builds}
        draft={draft}
        onChange={setDraft}
        problems={problem && !problems.ownName ? { ...problems, ownName: problem } : problems}
      />
      <FaultNotice fault={fault} />
      <div>
        <Button onPress={register} isDisabled={isBusy}>
          {say('starting.kit.save')}
        </Button>
      </div>
    </fieldset>
  )
}

interface PieceFieldsProps {
  readonly builds: Card['conditions']
  readonly draft: PieceDraft
  readonly onChange: (draft: PieceDraft) => void
  readonly problems: Readonly<Record<string, string>>
}

function PieceFields({ builds, draft, onChange, problems }: PieceFieldsProps) {
  const change = (part: Partial<PieceDraft>) => onChange({ ...draft, ...part })
  return (
    <>
      <Field
        label={say('starting.kit.name')}
        hint={say('starting.kit.name.hint')}
        value={draft.ownName}
        maxLength={200}
        onChange={(ownName) => change({ ownName })}
        error={problems.ownName}
      />
      {builds.map((condition) => (
        <Choice
          key={condition.name}
          isRow
          label={conditionTitle(condition)}
          value={draft.conditions[condition.name] ?? null}
          onChange={(id) => change({ conditions: { ...draft.conditions, [condition.name]: id } })}
          options={condition.options.map(({ id, text }) => ({ id, label: text }))}
          error={draft.conditions[condition.name] ? null : problems[condition.name]}
        />
      ))}
      <div className="row starting-checks">
        <Field
          width="short"
          label={say('starting.kit.unit')}
          hint={say('starting.kit.unit.hint')}
          value={draft.unit}
          maxLength={40}
          onChange={(unit) => change({ unit })}
        />
        <DateField
          label={say('starting.kit.last')}
          value={draft.lastCheck}
          onChange={(lastCheck) => change({ lastCheck })}
          error={problems.lastCheck}
        />
        <DateField
          label={say('starting.kit.next')}
          value={draft.nextCheck}
          onChange={(nextCheck) => change({ nextCheck })}
          error={problems.nextCheck}
        />
      </div>
    </>
  )
}
