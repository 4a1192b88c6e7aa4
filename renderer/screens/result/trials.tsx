import { useState } from 'react'
import type { Input } from '../../../main/contract/procedures.ts'
import type { Trial } from '../../../protocols/runner/view.ts'
import type { Result } from '../../../protocols/scoring/result.ts'
import { Button } from '../../parts/button.tsx'
import { Section } from '../../parts/page.tsx'
import { Table } from '../../parts/table.tsx'
import { hasWords, say } from '../../words/index.ts'
import { PutResultRight } from './put-right.tsx'
import { tellHalf } from './tell.ts'
import { tellOutcome, tellReadings, tellSide, tellTime } from '../../steps/tell.ts'

interface Props {
  readonly store: Input<'administrations.act'>['store']
  readonly result: Result
  /** Whose record it is in; null in a rehearsal. */
  readonly client: string | null
  /** Called after something was put right: everything is worked out again. */
  readonly onPutRight: () => void
}

/** What befell a trial, in the protocol's words, as part of a sentence. */
function seenIn({ happenings }: Result, name: string): string {
  const seen = happenings.find((each) => each.name === name)?.seen ?? name.replaceAll('_', ' ')
  return seen.replace(/\.$/, '')
}

function tellReason(trial: Trial, result: Result): string {
  const { happening = null, cause = '' } = trial.void ?? {}
  if (happening !== null) return seenIn(result, happening)
  const key = `result.void.${cause}`
  return hasWords(key) ? say(key) : cause.replaceAll('_', ' ')
}

function tellStatus(trial: Trial, result: Result): string {
  if (trial.status === 'void')
    return say('result.is_void', {
      reason: tellReason(trial, result),
      seen: trial.void?.valueSeen ? 'yes' : 'no',
      time: tellTime(trial.void?.at ?? ''),
      by: trial.void?.by ?? '',
    })
  return trial.practice ? say('result.is_practice') : tellOutcome(trial.outcome)
}

function tellHappenings(trial: Trial, result: Result): readonly string[] {
  return [...Map.groupBy(trial.happenings, (name) => name)].map(([name, all]) =>
    say('result.happened', { seen: seenIn(result, name), count: all.length }),
  )
}

function tellInput(trial: Trial): string {
  return trial.input === null ? '' : say(`result.input.${trial.input}`)
}

function Readings({ trial, result }: { trial: Trial; result: Result }) {
  const errors = result.timing?.times[trial.id] ?? {}
  const readings = tellReadings(trial)
  return (
    <>
      {readings.map(({ column, words }) => (
        <div key={column}>
          {errors[column] === undefined
            ? words
            : say('result.time_error', { words, half: tellHalf(errors[column], 1, 's') })}
        </div>
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

/** How a trial stands, what befell it and what was written about it. */
function about(trial: Trial, result: Result): readonly string[] {
  const written = [trial.remark, trial.void?.remark ?? ''].filter(Boolean)
  return [...new Set([tellStatus(trial, result), ...tellHappenings(trial, result), ...written])]
}

/** Every trial as it was given: practice and void ones too, each with how it was timed. */
export function Trials({ store, result, client, onPutRight }: Props) {
  const [open, setOpen] = useState(false)
  return (
    <Section title={say('result.trials')} hint={say('result.trials_hint')}>
      <div className="result-trials">
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
              <Readings key="readings" trial={trial} result={result} />,
              about(trial, result).map((words) => <div key={words}>{words}</div>),
              tellInput(trial),
              tellTime(trial.at),
            ],
          }))}
        />
      </div>
      {result.timing === null ? null : (
        <p className="soft">{say('result.pair_error', { pair: tellHalf(result.timing.pair, 2, 's') })}</p>
      )}
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
