/** The small forms of the administration: each asks for what its event needs, and for nothing else. */
import { type ReactNode, useState } from 'react'
import { CLOSINGS, type Closing } from '../../../protocols/language/model.ts'
import type { EventBody } from '../../../protocols/runner/events.ts'
import { Button } from '../../parts/button.tsx'
import { Choice } from '../../parts/choice.tsx'
import { Dialog } from '../../parts/dialog.tsx'
import { Field } from '../../parts/field.tsx'
import { say } from '../../words/index.ts'

export interface FormProps {
  /** Sends the event; null once it was taken, else why not, in words. */
  readonly onAct: (body: EventBody) => Promise<string | null>
  readonly onClose: () => void
}

interface ShellProps extends FormProps {
  readonly title: string
  readonly save: string
  /** The event as the form stands, or what is still missing. */
  readonly body: () => EventBody | { readonly missing: string }
  readonly children: ReactNode
}

/** What all of them share: one way to save, one to leave it, and what is wrong said in place. */
function FormShell({ title, save, body, children, onAct, onClose }: ShellProps) {
  const [problem, setProblem] = useState<string | null>(null)
  const send = async (): Promise<void> => {
    const made = body()
    if ('missing' in made && typeof made.missing === 'string') return setProblem(made.missing)
    const refused = await onAct(made as EventBody)
    if (refused === null) onClose()
    else setProblem(refused)
  }
  return (
    <Dialog
      title={title}
      isOpen
      onClose={onClose}
      actions={
        <>
          <Button look="strong" onPress={() => void send()}>
            {save}
          </Button>
          <Button onPress={onClose}>{say('administration.cancel')}</Button>
        </>
      }
    >
      {children}
      <p role="alert" className="giving-problem">
        {problem}
      </p>
    </Dialog>
  )
}

const missing = (key: string): { readonly missing: string } => ({ missing: say(`administration.${key}`) })

const PAUSES = ['client', 'interruption', 'kit', 'other'] as const
type Pause = (typeof PAUSES)[number]

export function PauseForm(props: FormProps) {
  const [why, setWhy] = useState<Pause | null>(null)
  const [more, setMore] = useState('')
  const body = (): EventBody | { readonly missing: string } => {
    if (why === null) return missing('choose_first')
    const words = [why === 'other' ? '' : say(`administration.pause.${why}`), more.trim()].filter(Boolean)
    return words.length === 0 ? missing('reason_missing') : { kind: 'paused', reason: words.join(': ') }
  }
  return (
    <FormShell
      {...props}
      title={say('administration.pause.title')}
      save={say('administration.pause.save')}
      body={body}
    >
      <Choice
        label={say('administration.pause.why')}
        options={PAUSES.map((id) => ({ id, label: say(`administration.pause.${id}`) }))}
        value={why}
        onChange={setWhy}
      />
      <Field label={say('administration.more')} value={more} onChange={setMore} width="wide" />
    </FormShell>
  )
}

export function RemarkForm(props: FormProps) {
  const [text, setText] = useState('')
  return (
    <FormShell
      {...props}
      title={say('administration.remark.title')}
      save={say('administration.save')}
      body={() => (text.trim() === '' ? missing('remark.missing') : { kind: 'remarked', text: text.trim() })}
    >
      <Field
        label={say('administration.remark.text')}
        value={text}
        onChange={setText}
        isMultiline
        width="wide"
        maxLength={2000}
      />
    </FormShell>
  )
}

const NORMS = ['kept', 'caution', 'withheld'] as const

/** Each deviation says whether the norms still apply; nothing is chosen beforehand. */
export function DeviationForm(props: FormProps) {
  const [what, setWhat] = useState('')
  const [reason, setReason] = useState('')
  const [norms, setNorms] = useState<(typeof NORMS)[number] | null>(null)
  const body = (): EventBody | { readonly missing: string } => {
    if (what.trim() === '') return missing('deviation.what_missing')
    if (reason.trim() === '') return missing('reason_missing')
    if (norms === null) return missing('deviation.norms_missing')
    return { kind: 'deviated', what: what.trim(), reason: reason.trim(), norms }
  }
  return (
    <FormShell
      {...props}
      title={say('administration.deviation.title')}
      save={say('administration.save')}
      body={body}
    >
      <Field label={say('administration.deviation.what')} value={what} onChange={setWhat} width="wide" />
      <Field label={say('administration.reason')} value={reason} onChange={setReason} width="wide" />
      <Choice
        label={say('administration.deviation.norms')}
        options={NORMS.map((id) => ({ id, label: say(`administration.deviation.${id}`) }))}
        value={norms}
        onChange={setNorms}
      />
    </FormShell>
  )
}

const OTHER = 'other'

/** One of the changes that the protocol allows, or another one: that then is a modification. */
export function AccommodationForm({
  allowed,
  ...props
}: FormProps & { readonly allowed: readonly { readonly id: string; readonly text: string }[] }) {
  const [which, setWhich] = useState<string | null>(null)
  const [what, setWhat] = useState('')
  const [reason, setReason] = useState('')
  const body = (): EventBody | { readonly missing: string } => {
    if (which === null) return missing('choose_first')
    const known = allowed.find((each) => each.id === which)
    const told = known?.text ?? what.trim()
    if (told === '') return missing('deviation.what_missing')
    if (reason.trim() === '') return missing('reason_missing')
    return { kind: 'accommodated', accommodation: known?.id ?? null, what: told, reason: reason.trim() }
  }
  return (
    <FormShell
      {...props}
      title={say('administration.accommodation.title')}
      save={say('administration.save')}
      body={body}
    >
      <Choice
        label={say('administration.accommodation.which')}
        options={[
          ...allowed.map(({ id, text }) => ({ id, label: text })),
          {
            id: OTHER,
            label: say('administration.accommodation.other'),
            detail: say('administration.accommodation.other_then'),
          },
        ]}
        value={which}
        onChange={setWhich}
      />
      {which === OTHER ? (
        <Field label={say('administration.deviation.what')} value={what} onChange={setWhat} width="wide" />
      ) : null}
      <Field label={say('administration.reason')} value={reason} onChange={setReason} width="wide" />
    </FormShell>
  )
}

export interface Closable {
  readonly what: string
  readonly label: string
  /** Where it is; left out: where the test stands. */
  readonly place?: Readonly<Record<string, string | number>>
}

/** Ends something without a result, each in its own way and none of them a zero; the rest goes on. */
export function CloseForm({
  closable,
  place,
  children,
  ...props
}: FormProps & {
  readonly children?: ReactNode
  readonly closable: readonly Closable[]
  readonly place: Readonly<Record<string, string | number>>
}) {
  const [what, setWhat] = useState<string | null>(closable.length === 1 ? (closable[0]?.what ?? null) : null)
  const [outcome, setOutcome] = useState<Closing | null>(null)
  const [reason, setReason] = useState('')
  const body = (): EventBody | { readonly missing: string } => {
    if (what === null || outcome === null) return missing('choose_first')
    const where = closable.find((each) => each.what === what)?.place ?? place
    return { kind: 'closed', what, place: { ...where }, outcome, reason: reason.trim() }
  }
  return (
    <FormShell
      {...props}
      title={say('administration.close.title')}
      save={say('administration.close.save')}
      body={body}
    >
      {children}
      <Choice
        label={say('administration.close.what')}
        options={closable.map((each) => ({ id: each.what, label: each.label }))}
        value={what}
        onChange={setWhat}
      />
      <Choice
        label={say('administration.close.outcome')}
        options={CLOSINGS.map((id) => ({ id, label: say(`steps.outcome.${id}`) }))}
        value={outcome}
        onChange={setOutcome}
      />
      <Field
        label={say('administration.more')}
        value={reason}
        onChange={setReason}
        width="wide"
        maxLength={1000}
      />
    </FormShell>
  )
}

export function SkipForm({
  step,
  place,
  ...props
}: FormProps & { readonly step: string; readonly place: Readonly<Record<string, string | number>> }) {
  const [reason, setReason] = useState('')
  return (
    <FormShell
      {...props}
      title={say('administration.skip.title')}
      save={say('administration.skip.save')}
      body={() =>
        reason.trim() === ''
          ? missing('reason_missing')
          : { kind: 'skipped', step, place: { ...place }, reason: reason.trim() }
      }
    >
      <p>{say('administration.skip.then')}</p>
      <Field label={say('administration.reason')} value={reason} onChange={setReason} width="wide" />
    </FormShell>
  )
}
