/** A score against the same client's earlier one, given the error of the measurement. */
import type { z } from 'zod'
import { difference } from '../language/expressions/exact.ts'
import { evaluate } from '../language/expressions/evaluate.ts'
import type { Scope } from '../language/expressions/types.ts'
import type { ChangeFigure, Protocol, Score, Text } from '../language/model.ts'
import { convert } from '../language/units.ts'
import type { Place } from '../runner/events.ts'
import { compareConditions } from './gathered.ts'
import { asPerformance } from './norm-figures.ts'
import type { Change, ErrorOfValue, missing } from './result.ts'
import { normalQuantile } from './statistics/normal.ts'

type Caution = z.infer<typeof missing>
type Figure = Change['figures'][number]

/** How an administration was given: what has to be alike for two values to be compared. */
export interface Manner {
  readonly version: string
  readonly wording: string | null
  /** Id, or name, by which one examiner is told from another. */
  readonly examiner: string
  readonly conditions: Readonly<Record<string, string>>
  /** How many of its deviations touch what is measured. */
  readonly deviations: number
}

/** An earlier administration of the same protocol to the same client. */
export interface Earlier {
  readonly administration: string
  readonly on: string
  readonly manner: Manner
  readonly scores: readonly {
    readonly score: string
    readonly place: Place
    readonly value: number | null
    readonly over: boolean
    readonly unit: string
  }[]
}

/** The value now. */
export interface Present {
  readonly protocol: Protocol
  readonly score: Score
  readonly place: Place
  readonly value: number
  readonly over: boolean
  readonly manner: Manner
  /** Names as the score sees them: figures say by an expression whom they apply to. */
  readonly scope: Scope
  say(text: Text): string
}

interface Value {
  readonly value: number
  readonly over: boolean
}

/** What has changed since an earlier administration; null where that has no value for this score and place. */
export function changeSince(earlier: Earlier, now: Present): Change | null {
  const then = earlier.scores.find(
    ({ score, place }) =>
      score === now.score.name && now.score.each.every((loop) => place[loop] === now.place[loop]),
  )
  const value =
    then === undefined || then.value === null ? null : convert(then.value, then.unit, now.score.unit)
  if (then === undefined || value === null) return null
  const first: Value = { value, over: then.over }
  const moved = isComparable(earlier.manner.version, now.manner.version) ? movedBy(first, now) : null
  const figures = figuresFor(now, first, moved, earlier.manner)
  return {
    earlier: {
      administration: earlier.administration,
      on: earlier.on,
      version: earlier.manner.version,
      value,
      over: then.over,
    },
    difference: moved?.value ?? null,
    differenceOver: moved?.over ?? false,
    towards: moved === null ? null : towards(moved.value, now.score.better),
    cautions: mannerCautions(now.protocol, earlier.manner, now.manner),
    figures,
    sentence: sentenceFor(earlier.manner.version, now.manner.version, moved, figures),
  }
}

/** Scores of different major versions aren't comparable. */
const isComparable = (then: string, now: string): boolean => then.split('.')[0] === now.split('.')[0]

/** Now less then. A bound on one side may make it a bound: `over` is then "at least so far from zero". */
function movedBy(then: Value, now: Value): Value | null {
  const value = difference(now.value, then.value)
  if (!then.over && !now.over) return { value, over: false }
  if (then.over && now.over) return null
  return (now.over ? value >= 0 : value <= 0) ? { value, over: true } : null
}

function towards(moved: number, better: Score['better']): Change['towards'] {
  const performance = asPerformance(moved, better)
  if (performance === null) return null
  return performance > 0 ? 'better' : performance < 0 ? 'worse' : 'same'
}

/** A figure as it stands for a value that nothing is compared with yet. */
export type FigureHere = Omit<Figure, 'exceeded'>

/** The figures that apply to a score in a place, with their size for this first value. */
export function figuresHere(
  now: Pick<Present, 'protocol' | 'score' | 'value' | 'scope' | 'say'>,
): FigureHere[] {
  return applying(now).map(({ figure, cautions }) =>
    sized(figure, now, { value: now.value, over: false }, cautions),
  )
}

/**
 * The error of a single value by each figure that applies: z.975 · SEM, where MDC95 = z.975 · sqrt(2) · SEM
 * (statistics: the difference of two values has the square root of two more).
 */
export function errorsHere(
  now: Pick<Present, 'protocol' | 'score' | 'value' | 'scope' | 'say'>,
): ErrorOfValue[] {
  return figuresHere(now).flatMap(
    ({ statistic, threshold, printed, population, source, provenance, n, cautions }) =>
      threshold !== null && (statistic === 'SEM' || statistic === 'MDC95')
        ? [{ statistic, half: threshold / Math.SQRT2, printed, population, source, provenance, n, cautions }]
        : [],
  )
}

function figuresFor(now: Present, first: Value, moved: Value | null, manner: Manner): Figure[] {
  return applying(now).map(({ figure, cautions }) => {
    const here = sized(figure, now, first, [...figureCautions(figure, now, manner), ...cautions])
    const { threshold } = here
    return {
      ...here,
      exceeded: threshold === null || moved === null ? null : isExceeded(figure, moved, threshold),
    }
  })
}

/** Figures of the score, without those that say that they don't apply. */
function applying({ protocol, score, scope }: Pick<Present, 'protocol' | 'score' | 'scope'>) {
  return protocol.change
    .filter(({ of }) => of === score.name)
    .flatMap((figure) => {
      const applies = figure.applies === null ? null : evaluate(figure.applies, scope)
      if (applies?.value === false) return []
      const cautions: Caution[] = applies?.missing
        ? [{ code: 'applies_unknown', detail: { reason: applies.missing.code } }]
        : []
      return [{ figure, cautions }]
    })
}

/**
 * The detectable change at 95 % that a standard error of measurement gives: z.975 · sqrt(2) · SEM
 * (statistics: SDdiff = SEM · sqrt(2); MDC95 = z.975 · SDdiff).
 */
export const mdc95FromSem = (sem: number): number => (normalQuantile(0.975) ?? 0) * Math.SQRT2 * sem

function sized(
  figure: ChangeFigure,
  { protocol, score, say }: Pick<Present, 'protocol' | 'score' | 'say'>,
  first: Value,
  cautions: readonly Caution[],
): FigureHere {
  const size = sizeOf(figure, first, score.unit)
  const isSem = figure.statistic === 'SEM'
  const source = protocol.sources.find(({ id }) => id === figure.source)
  return {
    statistic: figure.statistic,
    size,
    threshold: isSem && size !== null ? mdc95FromSem(size) : size,
    printed: `${figure.value} ${figure.unit}`,
    population: say(figure.population),
    source: source?.cite ?? figure.source,
    provenance: source?.seen ?? 'memory',
    n: figure.n,
    interval: figure.interval,
    cautions: isSem ? [...cautions, { code: 'from_sem', detail: {} }] : [...cautions],
  }
}

/** In the score's unit; null where it is a part of a first value that is a bound or zero. */
function sizeOf({ value, unit }: ChangeFigure, first: Value, scoreUnit: string): number | null {
  if (unit !== '%') return convert(value, unit, scoreUnit)
  return first.over || first.value === 0 ? null : (Math.abs(first.value) * value) / 100
}

/** An error must be exceeded; an important difference need only be reached. A bound below it leaves it open. */
function isExceeded({ statistic }: ChangeFigure, moved: Value, threshold: number): boolean | null {
  const far = Math.abs(moved.value)
  const isBeyond = statistic === 'MCID' ? far >= threshold : far > threshold
  return isBeyond ? true : moved.over ? null : false
}

function figureCautions(figure: ChangeFigure, now: Present, then: Manner): Caution[] {
  const cautions: Caution[] = []
  const isSame = then.examiner === now.manner.examiner
  if (figure.examiners !== 'unknown' && (figure.examiners === 'same') !== isSame)
    cautions.push({ code: 'figure_examiners', detail: { examiners: figure.examiners } })
  const { differing, unknown } = compareConditions(now.protocol, figure.gathered, now.manner.conditions, true)
  for (const detail of differing) cautions.push({ code: 'figure_condition_differs', detail })
  if (unknown.length > 0)
    cautions.push({
      code: 'figure_conditions_unknown',
      detail: { conditions: unknown.join(', '), count: unknown.length },
    })
  return cautions
}

function mannerCautions(protocol: Protocol, then: Manner, now: Manner): Caution[] {
  const cautions: Caution[] = []
  if (then.version !== now.version)
    cautions.push({ code: 'version_differs', detail: { before: then.version, now: now.version } })
  if (then.wording !== now.wording) cautions.push({ code: 'wording_differs', detail: {} })
  if (then.examiner !== now.examiner) cautions.push({ code: 'examiner_differs', detail: {} })
  const { differing } = compareConditions(protocol, then.conditions, now.conditions, true)
  for (const { condition, here, there } of differing)
    cautions.push({ code: 'condition_differed', detail: { condition, before: there, now: here } })
  if (then.deviations > 0) cautions.push({ code: 'deviated_then', detail: { count: then.deviations } })
  if (now.deviations > 0) cautions.push({ code: 'deviated_now', detail: { count: now.deviations } })
  cautions.push({ code: 'practice_not_adjusted', detail: {} })
  return cautions
}

/** What lies within the error of any figure that applies is never called a change. */
function sentenceFor(then: string, now: string, moved: Value | null, figures: readonly Figure[]): Caution {
  if (!isComparable(then, now)) return { code: 'not_comparable', detail: { before: then, now } }
  if (moved === null) return { code: 'cannot_tell', detail: {} }
  const errors = figures.filter(({ statistic }) => statistic !== 'MCID')
  const important = figures.filter(({ statistic }) => statistic === 'MCID')
  if (errors.length === 0) return { code: 'no_figure', detail: {} }
  const statistic = [...new Set(errors.map((figure) => figure.statistic))].join(', ')
  const beyond = errors.filter(({ exceeded }) => exceeded === true).length
  if (beyond === errors.length) {
    const matters = important.length > 0 && important.every(({ exceeded }) => exceeded === true)
    return {
      code: matters ? 'change_beyond_error_and_important' : 'change_beyond_error',
      detail: { statistic },
    }
  }
  if (errors.some(({ exceeded }) => exceeded === null)) return { code: 'cannot_tell', detail: {} }
  return beyond === 0
    ? { code: 'no_change_beyond_error', detail: { statistic } }
    : { code: 'figures_disagree', detail: { beyond, figures: errors.length } }
}
