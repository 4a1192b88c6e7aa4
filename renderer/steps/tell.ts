/** Values, units, sides and times in words: what the screens say alike wherever a trial is shown. */
import { SIDES } from '../../protocols/client.ts'
import type { Reading, Trial } from '../../protocols/runner/view.ts'
import { shownValue } from '../../protocols/scoring/rounding.ts'
import { hasWords, say } from '../words/index.ts'

const MINUS = '−'

/** A number with exactly `decimals` places, rounded once, at the end. Anything that is no number is said so. */
export function tellNumber(value: number | null, decimals: number): string {
  if (value === null || !Number.isFinite(value)) return say('steps.no_value')
  const shown = shownValue(value, decimals)
  return Number(shown) === 0 ? shown.replace('-', '') : shown.replace('-', MINUS)
}

/** A unit as people write it; one that has no words shows its own code, without the marks of annotations. */
export function tellUnit(unit: string): string {
  const key = `steps.unit.${unit}`
  if (hasWords(key)) return say(key)
  return unit === '1' ? '' : unit.replace(/[{}[\]]/g, '').replaceAll('_', ' ')
}

/** A value with its unit: `19.9 s`, `at least 60 s`. */
export function tellValue(value: number | null, decimals: number, unit: string, over = false): string {
  const number = tellNumber(value, decimals)
  const words = tellUnit(unit)
  const whole = value === null || words === '' ? number : say('steps.with_unit', { number, unit: words })
  return over && value !== null ? say('steps.at_least', { value: whole }) : whole
}

/** Wall time of the record with its offset, as it was where the test was given: `14:05 (UTC+01:00)`. */
export function tellTime(at: string): string {
  const [, time = '', offset = ''] = /T(\d{2}:\d{2})(?::\d{2}(?:\.\d+)?)?(Z|[+-]\d{2}:\d{2})$/.exec(at) ?? []
  return say('steps.time', { time, offset: offset === 'Z' ? '+00:00' : offset })
}

const SIDE_IDS: readonly (string | number)[] = SIDES

/** The hand that a place is at, whatever the loop over the hands is called; empty where it is at none. */
export function tellSide(place: Readonly<Record<string, string | number>>): string {
  const side = Object.values(place).find((pass) => SIDE_IDS.includes(pass))
  return side === undefined ? '' : say(`steps.hand.${side}`)
}

export const tellOutcome = (outcome: string | null): string =>
  outcome === null ? say('steps.no_value') : say(`steps.outcome.${outcome}`)

/** Timed values are read to a tenth, as closely as a hand can time; others as they were typed. */
function decimalsOf(column: string, reading: Reading & { readonly value: number }): number {
  if ((TIMES.includes(column) || reading.unit === 's') && !reading.typed) return 1
  return Math.min(3, (String(reading.value).split('.')[1] ?? '').length)
}

const TIMES: readonly string[] = ['time', 'added']

function tellReading(column: string, reading: Reading): string {
  const key = `steps.column.${column}`
  const { value } = reading
  const told =
    typeof value === 'number'
      ? tellValue(value, decimalsOf(column, { ...reading, value }), reading.unit ?? '1', reading.over)
      : (reading.options?.[String(value)] ?? String(value))
  const named = hasWords(key) ? say(key, { value: told }) : say('steps.column_other', { column, value: told })
  const marked = reading.typed && TIMES.includes(column) ? say('steps.typed', { value: named }) : named
  return reading.confirmed ? say('steps.confirmed', { value: marked }) : marked
}

/** What a trial measured, column by column, leaving out what it didn't. */
export function tellReadings(trial: Trial): readonly { readonly column: string; readonly words: string }[] {
  return Object.entries(trial.readings)
    .filter(([, reading]) => reading.value !== null)
    .map(([column, reading]) => ({ column, words: tellReading(column, reading) }))
}
