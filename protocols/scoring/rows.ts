/** The rows of a step's table: the trials that stand, with what an outcome counts as. */
import { list, none, number, restingOn, text } from '../language/expressions/datum.ts'
import type { Datum, ValueType } from '../language/expressions/types.ts'
import type { From, Outcome, Quantity, Step } from '../language/model.ts'
import { STEP_KINDS } from '../language/schema/kinds.ts'
import { convert } from '../language/units.ts'
import type { Place } from '../runner/events.ts'
import type { Reading, Trial } from '../runner/view.ts'

/** Works out the value that a file gives by an expression, in `unit`; null: it has none at that place. */
export type Quantify = (value: From<Quantity>, place: Place, unit: string) => Datum

/** A trial that enters scores: it stands, it is over, and it is no practice. */
export const isRow = (trial: Trial): boolean =>
  trial.status === 'standing' && !trial.practice && trial.outcome !== null

/** Whether a trial belongs to a place: the loops that both have agree. */
export function belongs(trial: Place, place: Place): boolean {
  // Asked of every trial by every score in every place: no list is made for it.
  for (const loop in place) if (Object.hasOwn(trial, loop) && trial[loop] !== place[loop]) return false
  return true
}

/** The table of a step as an expression sees it: each column, each tallied happening, `outcome`, and `rows`. */
export function tableOf(
  step: Step,
  trials: readonly Trial[],
  tallies: readonly string[],
  quantify: Quantify,
): Datum {
  const columns = STEP_KINDS.get(step.kind)?.columns(step) ?? {}
  const rows = trials.map((trial) => ({
    ...talliedIn(step, tallies, trial),
    ...rowOf(step, columns, trial, quantify),
  }))
  const names = ['outcome', ...tallies, ...Object.keys(columns)]
  const fields: Record<string, Datum> = {}
  for (const name of names) fields[name] = list(rows.map((row) => row[name] ?? none('no_property', { name })))
  fields.rows = list(rows.map((row): Datum => ({ is: 'record', fields: row })))
  return { is: 'record', fields }
}

function rowOf(
  step: Step,
  columns: Readonly<Record<string, ValueType>>,
  trial: Trial,
  quantify: Quantify,
): Record<string, Datum> {
  const row: Record<string, Datum> = {}
  for (const [loop, pass] of Object.entries(trial.place))
    row[loop] = typeof pass === 'number' ? number(pass) : text(pass, [trial.id])
  const [main] = Object.keys(columns)
  for (const [name, type] of Object.entries(columns)) {
    const read = readingOf(trial.readings[name], type, trial)
    row[name] =
      read ?? (name === main ? counted(step, type, trial, quantify) : null) ?? missing(step, name, trial)
  }
  row.outcome = text(trial.outcome ?? 'not_given', [trial.id])
  return row
}

/** How often each happening was seen in a trial; nothing is known of one that didn't come to its end. */
function talliedIn(step: Step, tallies: readonly string[], trial: Trial): Record<string, Datum> {
  const ended = trial.outcome === 'done' || trial.outcome === 'limit'
  const count = (name: string) => trial.happenings.filter((seen) => seen === name).length
  const entries = tallies.map((name): [string, Datum] => [
    name,
    ended ? number(count(name), false, [trial.id]) : missing(step, name, trial),
  ])
  return Object.fromEntries(entries)
}

function readingOf(reading: Reading | undefined, type: ValueType, trial: Trial): Datum | null {
  if (reading === undefined || reading.value === null) return null
  if (type.is !== 'number') return typeof reading.value === 'string' ? text(reading.value, [trial.id]) : null
  if (typeof reading.value !== 'number') return null
  const n =
    reading.unit === null || type.unit === null
      ? reading.value
      : convert(reading.value, reading.unit, type.unit)
  return n === null ? null : number(n, reading.over, [trial.id])
}

/** What an outcome other than done counts as, where the step says so. */
function counted(step: Step, type: ValueType, trial: Trial, quantify: Quantify): Datum | null {
  const as = countsAs(step, trial.outcome)
  if (as === undefined || type.is !== 'number') return null
  const value = quantify(as.value, trial.place, type.unit ?? '1')
  return value.is === 'number'
    ? { ...value, over: as.over, trials: [trial.id] }
    : restingOn(value, [trial.id])
}

const countsAs = (step: Step, outcome: Outcome | null) =>
  outcome === null || outcome === 'done' ? undefined : step.countsAs[outcome]

/** Why a trial has no value in a column: its outcome, or that nothing was read. */
function missing(step: Step, column: string, trial: Trial): Datum {
  const code = trial.outcome === null || trial.outcome === 'done' ? 'no_reading' : trial.outcome
  return none(code, { ...trial.place, step: step.name, column }, [trial.id])
}
