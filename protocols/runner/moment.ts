import type { Expression, Value } from '../language/expressions/types.ts'
import type { From, KitItem, Quantity, Step, Text } from '../language/model.ts'
import type { Place } from './events.ts'
import type { Trial } from './view.ts'

/** A moment on one of the monotonic clocks, in ms; `clock` names the page load that it counts from. */
export interface ClockTime {
  readonly at: number
  readonly clock: string
}

/** A step as it stands now: what its kind needs to judge an event, to draw it or to make up what comes next. */
export interface StepMoment {
  readonly step: Step
  readonly place: Place
  /** State of the kind's own chart. */
  readonly state: string
  /** The kind's own notes since the step began. */
  readonly local: Readonly<Record<string, unknown>>
  /** The trial in flight. */
  readonly trial: Trial | null
  /** Which attempt the trial in flight is, or the next one will be, void ones counted, from 1. */
  readonly attempt: number
  /** How many void trials may still be made good here; null: as many as needed. */
  readonly voidsLeft: number | null
  /** The last stop: keys are dead for a second after it. */
  readonly dead: ClockTime | null
  /** The pieces of the protocol's kit. */
  readonly kit: readonly KitItem[]
  /** Seconds that tallied happenings add to the trial in flight; null where the protocol has none that add. */
  readonly added: number | null
  /** When the last trial of a step ended, as seen from this place; null when there was none yet. */
  lastEnd(step: string): ClockTime | null
  /** Words of the protocol in the wording it is given by. */
  say(text: Text): string
  /** A value of the file in `unit`; null when its expression has none here. */
  quantity(from: From<Quantity>, unit: string): number | null
  /** What an expression of the file gives here. */
  value(expression: Expression): Value
}
