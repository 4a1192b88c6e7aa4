/** Numbers, units, dates and places in words. Rounded once, here. */
import { shownValue, shownWith } from '../../protocols/scoring/rounding.ts'
import type { Result, ScoreValue } from '../../protocols/scoring/result.ts'
import type { Reading, Trial } from '../../protocols/runner/view.ts'
import { hasWords, LANGUAGE, say } from './words.ts'

/** A number of things that takes the plural: a unit standing by itself. */
const MANY = 2

/** A name that an author gave, as words. */
export const plain = (name: string): string => name.replaceAll('_', ' ')

/**
 * A unit as it is shown beside that number; `none` where nothing is. Annotations of an author's own lose their
 * braces.
 */
export function unitWords(unit: string | null, number = MANY): string {
  if (unit === null) return 'none'
  const key = `unit.${unit}`
  if (hasWords(key)) return say(key, { number }) || 'none'
  return plain(unit.replace(/[{}]/g, ''))
}

export const amount = (value: number, decimals: number, unit: string, over = false): string =>
  say('value', {
    number: shownValue(value, decimals).replace('-', '−'),
    unit: unitWords(unit, value),
    over: over ? 'yes' : 'no',
  })

/** A value with the error of taking times by hand: `18.4 ± 0.2 s`. */
export function measuredAmount(value: number, half: number, decimals: number, unit: string): string {
  const shown = shownWith(value, half, decimals)
  const number = shown.value.replace('-', '−')
  return say('value.measured', { number, half: shown.half, unit: unitWords(unit, value) })
}

/** An error alone: `0.28 s`. */
export const halfAmount = (half: number, decimals: number, unit: string): string =>
  say('value', { number: shownWith(0, half, decimals).half, unit: unitWords(unit, half), over: 'no' })

export const scoreAmount = (score: ScoreValue, value: number): string =>
  amount(value, score.decimals, score.unit)

/** Made when the first day is written: its tables would cost every start a hundredth of a second. */
let dayFormat: Intl.DateTimeFormat | null = null

/** A civil date, from a date or a moment, in words: `2 March 2026`. */
export function day(text: string): string {
  dayFormat ??= new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeZone: 'UTC' })
  return dayFormat.format(new Date(`${text.slice(0, 10)}T00:00:00Z`))
}

export const clockTime = (at: string): string => at.slice(11, 16)

/** The offset that a moment was recorded with: `UTC+01:00`. */
export function offset(at: string): string {
  const found = /(Z|[+-]\d\d:\d\d)$/.exec(at)?.[0] ?? ''
  return say('utc', { offset: found === 'Z' ? '+00:00' : found.replace('-', '−') })
}

export const whenWho = (one: { readonly at: string; readonly by: string }): string =>
  say('when_who', { day: day(one.at), time: clockTime(one.at), by: one.by })

const SIDES = new Set(['right', 'left'])

/** Where in the test, outermost loop first; null for the whole test. */
export function whereOf(score: ScoreValue): string | null {
  const words = score.passes.map((pass) => {
    if (pass.id !== null && SIDES.has(pass.id)) return say('where.hand', { hand: pass.id })
    return pass.text ?? (pass.id === null ? numbered(pass.loop, pass.number) : plain(pass.id))
  })
  return words.length ? words.join(', ') : null
}

const numbered = (loop: string, number: number | string) =>
  say('where.pass', { loop: plain(loop), number: String(number) })

/** The places of a trial in words; a loop that only ever had one pass is left out. */
export function placeOf(trial: Trial, all: readonly Trial[]): string {
  return Object.entries(trial.place)
    .filter(
      ([loop, pass]) => SIDES.has(String(pass)) || all.some((other) => (other.place[loop] ?? pass) !== pass),
    )
    .map(([loop, pass]) => {
      if (SIDES.has(String(pass))) return say('where.hand', { hand: String(pass) })
      return typeof pass === 'number' ? numbered(loop, pass) : plain(pass)
    })
    .join(', ')
}

/** How many digits after the point a reading has, at most four: as it was taken, without the noise of doubles. */
const readingNumber = (value: number): string =>
  shownValue(value, 4)
    .replace(/\.?0+$/, '')
    .replace('-', '−')

/** A reading's value; times are shown to the hundredth, the rest as taken. */
export function readingWords(reading: Reading): string {
  const { value, unit, over } = reading
  if (value === null) return say('value.none')
  if (typeof value === 'string') return reading.options?.[value] ?? value
  const number = unit === 's' ? shownValue(value, 2) : readingNumber(value)
  return say('value', { number, unit: unitWords(unit, value), over: over ? 'yes' : 'no' })
}

/** The numbers that trials have in the list of all of them. */
export function trialNumbers(result: Result): ReadonlyMap<string, number> {
  return new Map(result.trials.map((trial, index) => [trial.id, index + 1]))
}

/** A code with its details in words, names without underscores; a code without words is shown as it is. */
export function reasonWords(
  group: string,
  reason: { readonly code: string; readonly detail: Readonly<Record<string, string | number>> },
  worded: Readonly<Record<string, string>> = {},
): string {
  const key = `${group}.${reason.code}`
  if (!hasWords(key)) return plain(reason.code)
  const detail = Object.entries(reason.detail).map(([name, value]) => [
    name,
    typeof value === 'string' ? plain(value) : value,
  ])
  return say(key, { ...Object.fromEntries(detail), ...worded })
}

/** Several things as one phrase: `a, b, c`. */
export const listed = (these: readonly string[]): string =>
  new Intl.ListFormat(LANGUAGE, { style: 'short', type: 'unit' }).format(these)
