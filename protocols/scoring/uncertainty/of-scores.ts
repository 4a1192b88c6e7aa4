/** The measuring uncertainty of scores that are worked out from hand-taken times. */
import type { Standing } from '../standing.ts'
import { workingOn } from '../scope.ts'
import type { Scored } from '../scores.ts'
import { scoreAt } from '../seen-score.ts'
import { type End, type Press, pressesOf, shifted, type TimingGround } from './presses.ts'
import { type Input, type Model, propagate, type Propagated, seedFrom } from './propagate.ts'

export interface MeasuringGround extends TimingGround {
  readonly standing: Standing
  /** Id of the administration: what a simulation draws is the same every time. */
  readonly administration: string
}

/** The error of the reading alone: change over time is judged by SEM and MDC, which hold it already. */
export interface MeasuringUncertainty extends Propagated {
  /** By how much the value is too large for unlike ends; 0 where they cancel, null where that isn't known. */
  readonly bias: number | null
  /** What began and ended its times; null where the file doesn't tell, or not all alike. */
  readonly start: End
  readonly stop: End
}

/** What all ends are; null where they differ. */
const alike = (ends: readonly End[]): End => (new Set(ends).size === 1 ? (ends[0] ?? null) : null)

/** Null where the score doesn't rest on times, has no value, or is a bound or a grade that jumps. */
export function uncertaintyOf(scored: Scored, ground: MeasuringGround): MeasuringUncertainty | null {
  const presses = pressesBehind([scored], ground)
  const { value } = scored
  if (value === null || scored.over || presses.length === 0 || isGrade(scored)) return null
  const model = modelOf(ground, presses, { rested: scored.trials, value }, (standing) =>
    valueIn(standing, scored),
  )
  const found = propagated(model, value, presses, seedOf(ground, scored))
  if (found === null || found.half === 0) return null
  return {
    ...found,
    bias: biasOf(model, presses, value),
    start: alike(presses.filter(({ column }) => column === null).map(({ end }) => end)),
    stop: alike(presses.filter(({ column }) => column !== null).map(({ end }) => end)),
  }
}

/** A value with its expanded uncertainty, and the trials that it rests on. */
export interface Measured {
  readonly value: number
  readonly half: number
  readonly trials: readonly string[]
}

/** Up to this relative uncertainty of the divisor a ratio is straight: what is left out is its square. */
const STRAIGHT_RATIO = 0.1

/**
 * Expanded uncertainties of the difference and the ratio of two values side by side, such as those of two hands, by the
 * law of propagation for independent inputs (JCGM 100:2008, 5.1.2 and, for the ratio, 5.1.6): null where they share
 * a trial, and so aren't independent, and for a ratio whose divisor is near zero beside its own error.
 */
export function uncertaintyBeside(
  one: Measured,
  other: Measured,
): { readonly difference: number | null; readonly ratio: number | null } {
  if (one.trials.some((id) => other.trials.includes(id))) return { difference: null, ratio: null }
  const isStraight = other.half <= STRAIGHT_RATIO * Math.abs(other.value)
  return {
    difference: Math.hypot(one.half, other.half),
    ratio: isStraight
      ? Math.hypot(one.half, (one.value / other.value) * other.half) / Math.abs(other.value)
      : null,
  }
}

/** Expanded uncertainties of the single times of each trial, by trial and column; those without times are left out. */
export function timesOf({
  standing,
  ...ground
}: MeasuringGround): Readonly<Record<string, Record<string, number>>> {
  const byTrial = Map.groupBy(pressesOf(standing.trials, ground), ({ trial }) => trial)
  return Object.fromEntries(
    [...byTrial].map(([trial, presses]) => {
      const start = presses.find(({ column }) => column === null)?.u ?? 0
      const halves = presses.flatMap(({ column, u }) =>
        column === null ? [] : [[column, 2 * Math.hypot(start, u)] as const],
      )
      return [trial, Object.fromEntries(halves)]
    }),
  )
}

/** A score in steps of its own, such as a grade or a count (not a count a second), has no spread about it: it jumps or it doesn't. */
const isGrade = ({ score }: Scored): boolean => /^\{[^{}]*\}$/.test(score.unit)

const seedOf = ({ administration }: MeasuringGround, { score, place }: Scored): number =>
  seedFrom(JSON.stringify([administration, score.name, ...Object.values(place)]))

const pressesBehind = (all: readonly Scored[], { standing, ...ground }: MeasuringGround): readonly Press[] =>
  pressesOf(standing.trials, ground).filter(({ trial }) => all.some(({ trials }) => trials.includes(trial)))

function valueIn(standing: Standing, { score, place }: Scored): number | null {
  const datum = scoreAt(workingOn(standing), score, place)
  return datum.is === 'number' && !datum.over ? datum.n : null
}

/**
 * The value as a function of how late each press came. Of a long test only the trials that the value rests on are looked
 * at, where they alone give the same value: it is worked out many times.
 */
function modelOf(
  { standing }: MeasuringGround,
  presses: readonly Press[],
  given: { readonly rested: readonly string[]; readonly value: number },
  value: (standing: Standing) => number | null,
): Model {
  const few = { ...standing, trials: standing.trials.filter(({ id }) => given.rested.includes(id)) }
  const ground = value(few) === given.value ? few : standing
  return (late) => value({ ...ground, trials: shifted(ground.trials, presses, late) })
}

/** Start and stop of a trial with one time only count together: they move it alike. */
function propagated(model: Model, value: number, presses: readonly Press[], seed: number): Propagated | null {
  const single = new Set(
    [...Map.groupBy(presses, ({ trial }) => trial)]
      .filter(([, all]) => all.length === 2)
      .map(([trial]) => trial),
  )
  const own = presses.filter(({ trial, column }) => column !== null || !single.has(trial))
  const places = own.map((press) => presses.indexOf(press))
  const inputs = own.map(({ trial, column, u }): Input => {
    const start = single.has(trial)
      ? presses.find((press) => press.trial === trial && press.column === null)
      : undefined
    return { u: Math.hypot(u, start?.u ?? 0), reading: trial, moves: column === null ? -1 : 1 }
  })
  const spread = (errors: readonly number[]): number[] => {
    const late = presses.map(() => 0)
    places.forEach((place, at) => {
      late[place] = errors[at] ?? 0
    })
    return late
  }
  return propagate((errors) => model(spread(errors)), value, inputs, seed)
}

function biasOf(model: Model, presses: readonly Press[], value: number): number | null {
  const biases = presses.map(({ bias }) => bias)
  if (!biases.every((bias): bias is number => bias !== null)) return null
  const without = model(biases.map((bias) => -bias))
  // Presses of one kind are late alike: what is left of their difference is rounding.
  return without === null ? null : Math.abs(value - without) < 1e-9 ? 0 : value - without
}
