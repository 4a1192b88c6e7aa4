/** What scores rest on, and what has been worked out from it so far. */
import type { ClientFacts } from '../client.ts'
import type { Datum, Scope } from '../language/expressions/types.ts'
import type { Protocol } from '../language/model.ts'
import type { ListOrder } from '../runner/chart-parts.ts'
import type { Place } from '../runner/events.ts'
import type { Trial } from '../runner/view.ts'
import type { Outline } from './outline.ts'

/** All that scores rest on: what was given, to whom, and under which conditions. */
export interface Standing {
  readonly protocol: Protocol
  /** In the order they were given; practice, void and running ones may be among them. */
  readonly trials: readonly Trial[]
  readonly facts: ClientFacts
  /** Condition name to what was recorded: an option's id, or a literal as written. */
  readonly conditions: Readonly<Record<string, string>>
  readonly orders: readonly ListOrder[]
  /** True where the test was left as the wrong one: its trials stay and are not scored. */
  readonly isWithdrawn?: boolean
}

export interface Working {
  readonly standing: Standing
  readonly outline: Outline
  /** Scores by name and place; a score being worked out stands there as `circular`. */
  readonly scores: Map<string, Datum>
  /** The names as an expression at a place sees them. */
  scope(place: Place): Scope
}
