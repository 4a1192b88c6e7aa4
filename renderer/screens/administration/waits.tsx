/** What stands on the screen while the test waits: paused, stopped for the client's sake, reopened after long. */
import { useState } from 'react'
import type { EventBody } from '../../../protocols/runner/events.ts'
import type { AdministrationView } from '../../../protocols/runner/view.ts'
import { Button } from '../../parts/button.tsx'
import { Choice } from '../../parts/choice.tsx'
import { Field } from '../../parts/field.tsx'
import { Page } from '../../parts/page.tsx'
import { hasWords, say } from '../../words/index.ts'

export interface WaitProps {
  readonly view: AdministrationView
  /** Sends the event; null once it was taken, else why not, in words. */
  readonly onAct: (body: EventBody) => Promise<string | null>
}

/** Why it waits: a reason that the examiner wrote, or one that the program knows by code. */
export function tellBecause(because: string | null): string {
  if (because === null) return ''
  const key = `administration.because.${because}`
  return hasWords(key) ? say(key) : because
}

const ENDS = ['nothing', 'trial', 'hand', 'test', 'visit'] as const
type Ends = (typeof ENDS)[number]
const PAINS = ['0', '1', '2', '3', '4', '5', '6', '7', '8', '9', '10', 'not_asked'] as const
type Pain = (typeof PAINS)[number]

/** What has to be told before it goes on: what ends, why, how much pain, what was done. */
function useHalt({ onAct }: Pick<WaitProps, 'onAct'>) {
  const [ends, setEnds] = useState<Ends | null>(null)
  const [reason, setReason] = useState('')
  const [pain, setPain] = useState<Pain | null>(null)
  const [done, setDone] = useState('')
  const [problem, setProblem] = useState<string | null>(null)
  const save = async (): Promise<void> => {
    if (ends === null) return setProblem(say('administration.halt.ends_missing'))
    if (reason.trim() === '') return setProblem(say('administration.reason_missing'))
    if (pain === null) return setProblem(say('administration.halt.pain_missing'))
    setProblem(
      await onAct({
        kind: 'settled',
        ends,
        reason: reason.trim(),
        pain: pain === 'not_asked' ? null : Number(pain),
        done: done.trim(),
      }),
    )
  }
  return { ends, setEnds, reason, setReason, pain, setPain, done, setDone, problem, save }
}

/** Stopped for the client's sake: clock and sound are off already; only now is it asked what ends and why. */
export function Halted({ onAct }: WaitProps) {
  const form = useHalt({ onAct })
  return (
    <Page title={say('administration.halt.title')} lead={say('administration.halt.lead')} isWide>
      <div className="giving-halt">
        <Choice
          label={say('administration.halt.ends')}
          options={ENDS.map((id) => ({
            id,
            label: say(`administration.halt.${id}`),
            detail: say(`administration.halt.${id}_then`),
          }))}
          value={form.ends}
          onChange={form.setEnds}
        />
        <div className="stack">
          <Field
            label={say('administration.halt.why')}
            value={form.reason}
            onChange={form.setReason}
            isRequired
            isMultiline
            width="wide"
            maxLength={1000}
          />
          <Choice
            label={say('administration.halt.pain')}
            hint={say('administration.halt.pain_hint')}
            options={PAINS.map((id) => ({
              id,
              label: id === 'not_asked' ? say('administration.halt.not_asked') : id,
            }))}
            value={form.pain}
            onChange={form.setPain}
            isRow
          />
          <Field
            label={say('administration.halt.done')}
            value={form.done}
            onChange={form.setDone}
            isMultiline
            width="wide"
            maxLength={1000}
          />
        </div>
      </div>
      <p role="alert" className="giving-problem">
        {form.problem}
      </p>
      <div>
        <Button look="strong" isLarge onPress={() => void form.save()}>
          {say('administration.halt.save')}
        </Button>
      </div>
    </Page>
  )
}

/** How long it has waited, in whole seconds by the wall clock: for the record, no trial is timed by it. */
const secondsSince = (at: string): number => Math.max(0, Math.round((Date.now() - Date.parse(at)) / 1000))

const CHOICES = ['go_on', 'practice_again', 'close'] as const

/** Reopened after the protocol's longest gap: nothing goes on before it is decided how. */
export function Stale({ view, onAct }: WaitProps) {
  const [choice, setChoice] = useState<(typeof CHOICES)[number] | null>(null)
  const [problem, setProblem] = useState<string | null>(null)
  const save = async (): Promise<void> => {
    if (choice === null) return setProblem(say('administration.choose_first'))
    setProblem(await onAct({ kind: 'reopened', afterSeconds: secondsSince(view.lastAt), choice }))
  }
  return (
    <Page title={say('administration.stale.title')} lead={say('administration.stale.lead')}>
      <Choice
        label={say('administration.stale.what')}
        options={CHOICES.map((id) => ({
          id,
          label: say(`administration.stale.${id}`),
          detail: say(`administration.stale.${id}_then`),
        }))}
        value={choice}
        onChange={setChoice}
        error={problem}
        isLarge
      />
      <div>
        <Button look="strong" isLarge onPress={() => void save()}>
          {say('administration.stale.save')}
        </Button>
      </div>
    </Page>
  )
}
