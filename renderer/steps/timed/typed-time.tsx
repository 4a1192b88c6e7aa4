import { useState } from 'react'
import type { Refusal } from '../../../protocols/runner/view.ts'
import { Button } from '../../parts/button.tsx'
import { Dialog } from '../../parts/dialog.tsx'
import { Field } from '../../parts/field.tsx'
import { readNumber } from '../../parts/read-number.ts'
import { say } from '../../words/index.ts'
import type { TypedProps } from '../face.ts'
import { tellRefusal } from '../refusal.tsx'
import { tellNumber } from '../tell.ts'

const MINUTES = { least: 0, most: 1440, isWhole: true }
const SECONDS = { least: 0, most: 86_400 }

/** Minutes and seconds from a watch, in boxes of their own, so that 1.30 is never read as the other thing. */
export function secondsFrom(minutes: string, seconds: string): number | { readonly problem: string } {
  const whole = readNumber(minutes, MINUTES)
  if (!('number' in whole)) return { problem: say(`parts.number.${whole.problem}`, MINUTES) }
  const rest = readNumber(seconds, whole.number === null ? SECONDS : { least: 0, most: 59.999 })
  if (!('number' in rest))
    return { problem: say(`parts.number.${rest.problem}`, { least: rest.least, most: rest.most }) }
  if (whole.number === null && rest.number === null) return { problem: say('steps.timed.typed_missing') }
  return Number((60 * (whole.number ?? 0) + (rest.number ?? 0)).toFixed(3))
}

function tellDoubt(refusal: Refusal, seconds: number): string {
  if (refusal.refused !== 'out_of_range') return tellRefusal(refusal)
  return say('steps.timed.typed_doubted', {
    seconds: String(seconds),
    lowest: tellNumber(Number(refusal.detail.lowest), 1),
    highest: tellNumber(Number(refusal.detail.highest), 0),
  })
}

/** A time that another watch took: it is marked as typed wherever it goes. */
export function TypedTime({ send, onClose }: TypedProps) {
  const [minutes, setMinutes] = useState('')
  const [seconds, setSeconds] = useState('')
  const [problem, setProblem] = useState<string | null>(null)
  const [doubted, setDoubted] = useState<number | null>(null)
  const save = async (): Promise<void> => {
    const read = secondsFrom(minutes, seconds)
    if (typeof read !== 'number') return setProblem(read.problem)
    const refusal = await send('typed', { seconds: read, confirmed: doubted === read })
    if (refusal === null) return onClose()
    setDoubted(refusal.refused === 'out_of_range' ? read : null)
    setProblem(tellDoubt(refusal, read))
  }
  return (
    <Dialog
      title={say('steps.timed.typed_title')}
      isOpen
      onClose={onClose}
      actions={
        <>
          <Button look="strong" onPress={() => void save()}>
            {say('steps.timed.typed_save')}
          </Button>
          <Button onPress={onClose}>{say('steps.cancel')}</Button>
        </>
      }
    >
      <p>{say('steps.timed.typed_hint')}</p>
      <form
        className="row"
        onSubmit={(event) => {
          event.preventDefault()
          void save()
        }}
      >
        <Field
          label={say('steps.timed.typed_minutes')}
          value={minutes}
          onChange={setMinutes}
          kind="number"
          width="short"
        />
        <Field
          label={say('steps.timed.typed_seconds')}
          value={seconds}
          onChange={setSeconds}
          kind="number"
          width="short"
          takesFocus
        />
        <button type="submit" className="unseen" tabIndex={-1} aria-hidden="true" />
      </form>
      <p role="alert" className="step-entry-problem">
        {problem}
      </p>
    </Dialog>
  )
}
