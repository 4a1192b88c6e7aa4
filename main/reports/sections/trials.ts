import type { Reading, Trial } from '../../../protocols/runner/view.ts'
import { clockTime, halfAmount, placeOf, plain, readingWords } from '../figures.ts'
import type { ReportInput } from '../input.ts'
import type { Result } from '../../../protocols/scoring/result.ts'
import { type Block, heading, narrow, numeric, note, table, wide } from '../page.ts'
import { hasWords, say } from '../words.ts'
import { onSheets, sheetTables } from './sheet-readings.ts'

/** What befell a trial, in the protocol's words, as part of a sentence. */
type Seen = ReadonlyMap<string, string>

const seenIn = ({ happenings }: Result): Seen =>
  new Map(happenings.map(({ name, seen }) => [name, seen.replace(/\.$/, '')]))

function standsWords(trial: Trial, seen: Seen): string {
  if (trial.status === 'running') return say('stands.running')
  if (trial.status === 'void') {
    const { happening = null, cause = '', valueSeen = false, at = '', by = '' } = trial.void ?? {}
    const key = `void.${cause}`
    const told = happening === null ? null : (seen.get(happening) ?? plain(happening))
    const reason = told ?? (hasWords(key) ? say(key) : plain(cause))
    return say('stands.void', { reason, seen: valueSeen ? 'yes' : 'no', time: clockTime(at), by })
  }
  return trial.outcome ? say(`outcome.${trial.outcome}`) : ''
}

/** A value with how it came about, where that isn't by a clock. */
function markedWords(value: string, { typed, confirmed }: Reading): string {
  const told = typed ? say('value.typed', { value }) : value
  return confirmed ? say('value.confirmed', { value: told }) : told
}

function oneReading(name: string, reading: Reading, alone: boolean): string {
  const { corrected } = reading
  const value = corrected
    ? say('value.corrected', {
        value: readingWords(reading),
        first: readingWords({ ...reading, value: corrected.first, over: false }),
        reason: corrected.reason,
      })
    : readingWords(reading)
  const typed = markedWords(value, reading)
  const key = `reading.${name}`
  return alone ? typed : say('value.named', { name: hasWords(key) ? say(key) : plain(name), value: typed })
}

function measuredWords(trial: Trial): string {
  const readings = Object.entries(trial.readings).filter(([, reading]) => reading.value !== null)
  return readings.map(([name, reading]) => oneReading(name, reading, readings.length === 1)).join('; ')
}

const remarksOf = (trial: Trial, seen: Seen): string[] => [
  ...[...Map.groupBy(trial.happenings, (one) => one)].map(([one, all]) =>
    say('happened', { seen: seen.get(one) ?? plain(one), count: all.length }),
  ),
  trial.remark,
  trial.void?.remark ?? '',
]

/** How far two single times must lie apart; empty where none was taken. */
const pairWords = ({ timing }: Result): string =>
  timing === null ? '' : say('trials.pair', { pair: halfAmount(timing.pair, 2, 's') })

/** Every trial as it was given, practice and void ones too, each with how it was timed. */
export function trialsOf(input: ReportInput): Block[] {
  const { result } = input
  const { trials } = result
  const sheets = onSheets(input)
  const alone = trials.filter((trial) => !sheets.has(trial))
  const seen = seenIn(result)
  if (trials.length === 0) return [heading(say('trials')), note(say('trials.none'))]
  const steps = new Set(trials.filter(({ practice }) => !practice).map(({ step }) => step))
  /** Practice goes by that name, whatever its step is called. */
  const stepWords = ({ practice, step }: Trial) => {
    if (practice) return say('stands.practice')
    return steps.size > 1 ? plain(step) : ''
  }
  const where = (trial: Trial) => [placeOf(trial, trials), stepWords(trial)].filter(Boolean).join(', ')
  /** Which try it was is said where there was more than one in that place. */
  const again = (trial: Trial) => trials.some((one) => one.attempt > 1 && where(one) === where(trial))
  const lines = table(
    say('trials'),
    [
      numeric(say('column.number')),
      narrow(say('column.trial')),
      narrow(say('column.measured')),
      narrow(say('column.timed_by')),
      wide(say('column.stands')),
      numeric(say('column.at')),
    ],
    alone.map((trial) => [
      String(trials.indexOf(trial) + 1),
      [where(trial), again(trial) ? say('attempt', { attempt: String(trial.attempt) }) : '']
        .filter(Boolean)
        .join(', '),
      measuredWords(trial),
      say(trial.input ? `input.${trial.input}` : 'input.none'),
      [standsWords(trial, seen), ...remarksOf(trial, seen)].filter(Boolean).join('; '),
      clockTime(trial.at),
    ]),
    { grey: alone.flatMap((trial, index) => (trial.status === 'void' || trial.practice ? [index] : [])) },
  )
  return [
    heading(say('trials'), [say('trials.hint'), pairWords(result)].filter(Boolean).join(' ')),
    ...(alone.length ? [lines] : []),
    ...sheetTables(input, (trial) =>
      [measuredWords(trial), trial.outcome === 'done' ? '' : standsWords(trial, seen)]
        .filter(Boolean)
        .join(', '),
    ),
  ]
}
