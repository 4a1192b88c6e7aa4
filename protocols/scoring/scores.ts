/** All scores of an administration, worked out from its trials by the protocol's own formulas. */
import { none, trialsOf } from '../language/expressions/datum.ts'
import type { Datum, Missing } from '../language/expressions/types.ts'
import type { Score } from '../language/model.ts'
import type { Place } from '../runner/events.ts'
import { workingOn } from './scope.ts'
import type { Standing, Working } from './standing.ts'
import { itemsOf, passesOf, scoreAt } from './seen-score.ts'

/** A score in one place. It is unrounded: rounding comes once, last, where it is shown. */
export interface Scored {
  readonly score: Score
  /** The passes of the score's `each`. */
  readonly place: Place
  readonly value: number | null
  /** True where the value is a bound: "at least". */
  readonly over: boolean
  readonly missing: Missing | null
  /** Ids of the trials that the value, or its lack, rests on. */
  readonly trials: readonly string[]
}

/**
 * Every score that is a number, in every place it is due. Practice and void trials never enter. Scores that are
 * texts or conditions only serve other expressions. An administration that was withdrawn has no values.
 */
export function scoreAll(standing: Standing): readonly Scored[] {
  const working = workingOn(standing)
  return standing.protocol.scores
    .filter((score) => score.value.type.is === 'number')
    .flatMap((score) =>
      placesOf(working, score).map((place) =>
        scored(score, place, standing.isWithdrawn ? none('withdrawn') : scoreAt(working, score, place)),
      ),
    )
}

function scored(score: Score, place: Place, datum: Datum): Scored {
  const trials = trialsOf(datum)
  if (datum.is === 'number') return { score, place, value: datum.n, over: datum.over, missing: null, trials }
  const missing = datum.is === 'none' ? datum.missing : { code: 'not_a_number', detail: {} }
  return { score, place, value: null, over: false, missing, trials }
}

/** The places of a score's `each`, outermost loop first; before the first trial, every item of its lists. */
function placesOf(working: Working, score: Score): Place[] {
  return score.each.reduce<Place[]>(
    (places, loop) =>
      places.flatMap((place) => {
        const passes: (string | number)[] = passesOf(working, score, loop, place)
        const due = passes.length > 0 ? passes : itemsOf(working, loop)
        return due.map((pass) => ({ ...place, [loop]: pass }))
      }),
    [{}],
  )
}

/**
 * Whether scoring again gives what was stored, to the last bit: values, bounds, reasons and trials.
 */
export function scoresEqual(a: readonly Scored[], b: readonly Scored[]): boolean {
  return JSON.stringify(a.map(comparable)) === JSON.stringify(b.map(comparable))
}

const comparable = ({ score, place, value, over, missing, trials }: Scored) => [
  score.name,
  Object.entries(place).sort(([x], [y]) => (x < y ? -1 : 1)),
  value,
  over,
  missing,
  [...trials].sort(),
]
