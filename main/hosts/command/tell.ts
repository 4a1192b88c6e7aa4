/** Codes, units, rows and places of a result in words, as the command line prints them. */
import { shownValue, shownWith } from '../../../protocols/scoring/rounding.ts'
import type { NormComparison, ScoreValue } from '../../../protocols/scoring/result.ts'
import { isHostWord, say } from '../words.ts'
import { chosenText, figuresText, percentText } from './tell-figures.ts'

/** The groups of codes in `protocols/scoring/reasons.ts`. */
export type ReasonGroup = 'missing' | 'norm_caution' | 'other_hand' | 'change_caution' | 'change_sentence'

interface Reason {
  readonly code: string
  readonly detail: Readonly<Record<string, string | number>>
}

/** A name that an author gave, as words. */
const plain = (name: string): string => name.replaceAll('_', ' ')

/** A code with its details in words; one that has no words is shown as it is. */
export function tellReason(group: ReasonGroup, { code, detail }: Reason): string {
  const key = `${group}.${code}`
  if (!isHostWord(key)) return plain(code)
  const told = Object.entries(detail).map(([name, value]) => [
    name,
    typeof value === 'string' ? plain(value) : value,
  ])
  return say(key, Object.fromEntries(told))
}

/** Units that nobody writes beside a number. */
const UNWRITTEN: readonly string[] = ['1', '{count}']

function tellUnit(unit: string, number: number): string {
  if (UNWRITTEN.includes(unit)) return 'none'
  const key = `unit.${unit}`
  return isHostWord(key) ? say(key, { number }) : plain(unit.replace(/[{}]/g, ''))
}

/** A number with its unit as people write it; annotations of an author's own lose their braces. */
export function tellAmount(value: number, decimals: number, unit: string, over = false): string {
  const number = shownValue(value, decimals).replace('-', '−')
  return say('amount', { number, unit: tellUnit(unit, value), over: over ? 'yes' : 'no' })
}

/** A value with the error of taking times by hand: `18.4 ± 0.2 s`. */
export function tellMeasured(value: number, half: number, decimals: number, unit: string): string {
  const shown = shownWith(value, half, decimals)
  return say('amount.measured', {
    number: shown.value.replace('-', '−'),
    half: shown.half,
    unit: tellUnit(unit, value),
  })
}

/** An error alone: `0.28 s`. */
const tellHalf = (half: number, decimals: number, unit: string): string =>
  say('amount', { number: shownWith(0, half, decimals).half, unit: tellUnit(unit, half), over: 'no' })

/** Where in the test: `right hand`, `near`, `trial 2`; empty for the whole test. */
export const tellPlace = (passes: ScoreValue['passes']): string =>
  passes
    .map(({ list, loop, id, text, number }) => {
      if (list === 'hands' && id !== null) return say('hand', { hand: id })
      return text ?? (id === null ? `${plain(loop)} ${number}` : plain(id))
    })
    .join(', ')

type Stratum = NormComparison['strata'][number]

function agesOf({ ageMin, ageMax }: Stratum): string {
  if (ageMin === null && ageMax === null) return say('ages.any')
  if (ageMin === null) return say('ages.to', { to: String(ageMax) })
  if (ageMax === null) return say('ages.from', { from: String(ageMin) })
  if (ageMin === ageMax) return say('ages.one', { from: String(ageMin) })
  return say('ages', { from: String(ageMin), to: String(ageMax) })
}

const signed = (value: number): string => shownValue(value, 2).replace('-', '−')

function tellRow(row: Stratum, { decimals, unit }: Shown): string {
  const { sex, hand, n, mean, sd, line, z, percentile, percentileInterval, figures } = row
  const whom = { sex, hand, line, ages: agesOf(row), n: n ?? 'none' }
  if (figures !== null) {
    return say('norm.whom', {
      ...whom,
      chosen: chosenText(row),
      figures: figuresText(row, figures, decimals),
    })
  }
  return say('norm.row', {
    ...whom,
    // One decimal more than the score has: a mean is finer than what it is the mean of.
    mean: mean === null ? 'none' : tellAmount(mean, decimals + 1, unit),
    sd: sd === null ? 'none' : tellAmount(sd, decimals + 1, unit),
    z: z === null ? 'none' : signed(z),
    percentile: percentile === null ? 'none' : percentText(percentile),
    low: percentileInterval === null ? 'none' : percentText(percentileInterval[0]),
    high: percentileInterval === null ? 'none' : percentText(percentileInterval[1]),
  })
}

type Shown = Pick<ScoreValue, 'decimals' | 'unit' | 'better'>

/** The rows of every norm table that was looked at, or why there is none, and what to keep in mind. */
export function normLines(norms: readonly NormComparison[], shown: Shown): readonly string[] {
  return norms.flatMap(({ title, standing, verifiedBy, status, caution, strata }) => [
    say('norm.head', { title, standing, by: verifiedBy ?? '' }),
    ...(status === 'used' ? [] : [say(`norm.status.${status}`)]),
    ...strata.map((row) => tellRow(row, shown)),
    ...caution.map((each) => say('norm.caution', { caution: tellReason('norm_caution', each) })),
  ])
}

const DEFINITIONS = [
  'normal',
  'modified-t',
  'lms',
  'tabulated',
] as const satisfies readonly Stratum['definition'][]

/** What z and percentile are, once for all rows that have them. */
export function definitionLines(scores: readonly (Shown & Pick<ScoreValue, 'norms'>)[]): readonly string[] {
  const compared = scores.filter(({ norms }) =>
    norms.some(({ strata }) => strata.some(({ z }) => z !== null)),
  )
  if (compared.length === 0) return []
  const rows = compared.flatMap(({ norms }) => norms.flatMap(({ strata }) => strata))
  const used = DEFINITIONS.filter((each) =>
    rows.some(({ definition, percentile }) => percentile !== null && definition === each),
  )
  const directions = [...new Set(compared.map(({ better }) => better))]
  return [
    '',
    ...directions.map((better) => say('definition.z', { better })),
    ...used.map((each) => say(`definition.${each}`)),
    ...(rows.some(({ percentileInterval }) => percentileInterval !== null)
      ? [say('definition.interval')]
      : []),
  ]
}

/** A published figure for the error of the measurement, and what to keep in mind with it. */
export function figureLines(figure: {
  readonly statistic: string
  readonly printed: string
  readonly population: string
  readonly source: string
  readonly provenance: 'seen' | 'memory' | 'abstract'
  readonly cautions: readonly Reason[]
}): readonly string[] {
  const { cautions, statistic, printed, population, source, provenance } = figure
  return [
    say('compare.figure', { statistic, printed, population, source, provenance }),
    ...cautions.map((each) => say('norm.caution', { caution: tellReason('change_caution', each) })),
  ]
}

/** How the value stands beside the other hand's, or why that isn't told. */
export function otherHandLines({ otherHand, decimals, unit }: ScoreValue): readonly string[] {
  if (otherHand === null) return []
  const { difference, ratio, withheld } = otherHand
  if (withheld !== null) return [say('score.other_hand', { what: tellReason('other_hand', withheld) })]
  if (difference === null) return []
  const half = otherHand.uncertainty?.difference ?? null
  const apart = say('score.apart', {
    difference: tellAmount(Math.abs(difference), decimals, unit),
    ratio: ratio === null ? 'none' : signed(ratio),
  })
  const what =
    half === null
      ? apart
      : say('score.apart_error', {
          apart,
          half: tellHalf(half, decimals, unit),
          within: Math.abs(difference) <= half ? 'yes' : 'no',
        })
  return [say('score.other_hand', { what })]
}

/** How it changed since an earlier time, where one is known, in one sentence each. */
export const changeLines = ({ change }: ScoreValue): readonly string[] =>
  change.map(({ earlier, sentence }) =>
    say('score.change', { on: earlier.on, sentence: tellReason('change_sentence', sentence) }),
  )
