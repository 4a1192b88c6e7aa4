import { useState } from 'react'
import type { Input } from '../../../main/contract/procedures.ts'
import type { Trial } from '../../../protocols/runner/view.ts'
import type { Result } from '../../../protocols/scoring/result.ts'
import { Button } from '../../parts/button.tsx'
import { Section } from '../../parts/page.tsx'
import { Table } from '../../parts/table.tsx'
import { hasWords, say } from '../../words/index.ts'
import { PutResultRight } from './put-right.tsx'
import { tellOutcome, tellReadings, tellSide, tellTime } from '../../steps/tell.ts'

interface Props {
  readonly store: Input<'administrations.act'>['store']
  readonly result: Result
  /** Whose record it is in; null in a rehearsal. */
  readonly client: string | null
  /** Called after something was put right: everything is worked out again. */
  readonly onPutRight: () => void
}

function tellStatus(trial: Trial): string {
  if (trial.status === 'void') {
    const cause = trial.void?.happening ?? trial.void?.cause ?? ''
    const key = `result.void.${cause}`
    const reason = hasWords(key) ? say(key) : cause.replaceAll('_', ' ')
    return say('result.is_void', { reason, seen: trial.void?.valueSeen ? 'yes' : 'no' })
  }
  return trial.practice ? say('result.is_practice') : tellOutcome(trial.outcome)
}

function tellInput(trial: Trial): string {
  return trial.input === null ? '' : say(`result.input.${trial.input}`)
}

function Readings({ trial }: { trial: Trial }) {
  const readings = tellReadings(trial)
  return (
    <>
      {readings.map(({ column, words }) => (
        <div key={column}>{words}</div>
      ))}
      {Object.entries(trial.readings).map(([column, { corrected }]) =>
        corrected === null ? null : (
          <div key={`${column} corrected`} className="result-caution">
            {say('result.was_corrected', {
              first: corrected.first === null ? say('steps.no_value') : String(corrected.first),
              reason: corrected.reason,
            })}
          </div>
        ),
      )}
    </>
  )
}

const remarks = (trial: Trial): string => [trial.remark, trial.void?.remark ?? ''].filter(Boolean).join(' ')

/** Every trial as it was given: practice and void ones too, each with how it was timed. */
export function Trials({ store, result, client, onPutRight }: Props) {
  const [open, setOpen] = useState(false)
  return (
    <Section title={say('result.trials')} hint={say('result.trials_hint')}>
      <Table
        caption={say('result.trials')}
        columns={[
          { id: 'number', title: say('result.number') },
          { id: 'hand', title: say('result.hand') },
          { id: 'readings', title: say('result.measured') },
          { id: 'status', title: say('result.status_title') },
          { id: 'input', title: say('result.timed_by') },
          { id: 'when', title: say('result.when') },
        ]}
        rows={result.trials.map((trial, index) => ({
          id: trial.id,
          cells: [
            String(index + 1),
            tellSide(trial.place),
            <Readings key="readings" trial={trial} />,
            [tellStatus(trial), remarks(trial)].filter(Boolean).join(' '),
            tellInput(trial),
            tellTime(trial.at),
          ],
        }))}
      />
      <div className="row">
        <Button onPress={() => setOpen(true)}>{say('result.put_right')}</Button>
      </div>
      {open ? (
        <PutResultRight
          store={store}
          result={result}
          client={client}
          onClose={() => setOpen(false)}
          onDone={() => {
            setOpen(false)
            onPutRight()
          }}
        />
      ) : null}
    </Section>
  )
}
