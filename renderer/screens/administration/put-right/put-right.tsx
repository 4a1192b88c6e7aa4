import { type ReactNode, useState } from 'react'
import type { EventBody } from '../../../../protocols/runner/events.ts'
import type { Trial } from '../../../../protocols/runner/view.ts'
import { Button } from '../../../parts/button.tsx'
import { Choice } from '../../../parts/choice.tsx'
import { Dialog } from '../../../parts/dialog.tsx'
import { Field } from '../../../parts/field.tsx'
import { say } from '../../../words/index.ts'
import { NO_WHO, WhoFields, whoBody } from './who-fields.tsx'
import { NO_VALUE, ValueFields, valueBody } from './value-fields.tsx'

const WRONGS = ['value', 'hands', 'who', 'client', 'test'] as const
type Wrong = (typeof WRONGS)[number]

export interface PutRightProps {
  /** What is wrong, where that was said already. */
  readonly first: 'value' | null
  readonly trials: readonly Trial[]
  /** The administration's examiner and day, as they stand now. */
  readonly examiner: string
  readonly on: string
  /** Sends the correction; false when it was not taken, and `problem` then says why. */
  readonly onAct: (body: EventBody) => Promise<boolean>
  /** Leads to where the right client is found; null where it belongs to none. */
  readonly onMove: (() => void) | null
  readonly problem: ReactNode
  readonly onClose: () => void
}

interface Draft {
  readonly wrong: Wrong | null
  readonly reason: string
  readonly value: typeof NO_VALUE
  readonly who: typeof NO_WHO
}

const NO_DRAFT: Draft = { wrong: null, reason: '', value: NO_VALUE, who: NO_WHO }

/** The body that a draft comes to, or what is still wrong with it. */
function bodyOf(draft: Draft, props: PutRightProps): EventBody | { readonly problem: string } {
  const reason = draft.reason.trim()
  if (draft.wrong === null) return { problem: say('administration.choose_first') }
  if (reason === '') return { problem: say('administration.reason_missing') }
  if (draft.wrong === 'value') return valueBody(draft.value, props.trials, reason)
  if (draft.wrong === 'who') return whoBody(draft.who, reason)
  return draft.wrong === 'hands' ? { kind: 'relabelled', reason } : { kind: 'withdrawn', reason }
}

function Fields({
  draft,
  set,
  props,
}: {
  draft: Draft
  set: (change: Partial<Draft>) => void
  props: PutRightProps
}) {
  switch (draft.wrong) {
    case 'value':
      return <ValueFields trials={props.trials} value={draft.value} onChange={(value) => set({ value })} />
    case 'who':
      return (
        <WhoFields
          examiner={props.examiner}
          on={props.on}
          value={draft.who}
          onChange={(who) => set({ who })}
        />
      )
    case 'client':
      return <p>{say('administration.put_right.client_then')}</p>
    case 'hands':
      return <p>{say('administration.put_right.hands_then')}</p>
    case 'test':
      return <p>{say('administration.put_right.test_then')}</p>
    case null:
      return null
  }
}

/** Puts something right without repeating a trial: what stood there first stays in the record. */
export function PutRight(props: PutRightProps) {
  const [draft, setDraft] = useState<Draft>({ ...NO_DRAFT, wrong: props.first })
  const [problem, setProblem] = useState<string | null>(null)
  const set = (change: Partial<Draft>): void => {
    setProblem(null)
    setDraft((before) => ({ ...before, ...change }))
  }
  const save = async (): Promise<void> => {
    if (draft.wrong === 'client') return props.onMove?.()
    const body = bodyOf(draft, props)
    if ('problem' in body && typeof body.problem === 'string') return setProblem(body.problem)
    if (await props.onAct(body as EventBody)) props.onClose()
    else set({ value: { ...draft.value, isDoubted: true } })
  }
  return (
    <Dialog
      title={say('administration.put_right.title')}
      isOpen
      onClose={props.onClose}
      actions={
        <>
          <Button look="strong" onPress={() => void save()}>
            {say(draft.wrong === 'client' ? 'administration.put_right.find_client' : 'administration.save')}
          </Button>
          <Button onPress={props.onClose}>{say('administration.cancel')}</Button>
        </>
      }
    >
      <Choice
        label={say('administration.put_right.what')}
        options={WRONGS.filter((id) => id !== 'client' || props.onMove !== null).map((id) => ({
          id,
          label: say(`administration.put_right.${id}`),
        }))}
        value={draft.wrong}
        onChange={(wrong) => set({ wrong })}
      />
      <Fields draft={draft} set={set} props={props} />
      {draft.wrong === null || draft.wrong === 'client' ? null : (
        <Field
          label={say('administration.reason')}
          hint={say('administration.put_right.reason_hint')}
          value={draft.reason}
          onChange={(reason) => set({ reason })}
          isRequired
          isMultiline
          width="wide"
          error={problem}
        />
      )}
      {draft.wrong === null && problem !== null ? <p role="alert">{problem}</p> : null}
      {props.problem}
    </Dialog>
  )
}
