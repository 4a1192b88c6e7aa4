/**
 * What a kind of step is to the rest of the domain. Each folder beside this file default-exports one from its
 * `index.ts`, and is found by listing: nothing outside a kind's folders asks which kind a step is.
 */
import type { z } from 'zod'
import type { Wanted } from '../language/convert/draft.ts'
import type { ValueType } from '../language/expressions/types.ts'
import type { Step, Text } from '../language/model.ts'
import type { StepChart } from '../runner/chart-parts.ts'
import type { Stamp } from '../runner/events.ts'
import type { StepMoment } from '../runner/moment.ts'
import type { Range } from '../runner/plausible.ts'
import type { Refusal } from '../runner/view.ts'

/**
 * What starts or stops a trial: words that are said or something that is seen. `by` is null where the words
 * come from a list's item (`{ from }`), which doesn't tell which of the two they are.
 */
export interface Cue {
  readonly by: 'said' | 'seen' | null
  readonly text: Text
}

/** What the reader hands a kind so that it can turn its raw keys into fields of its own. */
export interface StepKind {
  readonly kind: string
  /** The keys that a step of this kind may have beside the common ones, as written in the file; strict. */
  readonly keys: z.ZodObject
  /**
   * Keys of `keys` that hold a text (or `{ from }` of one): a `Text` in the step's fields. A path such as
   * `options.*` names each entry of a map.
   */
  readonly texts: readonly string[]
  /** Keys of `keys` that hold `{ said }`, `{ seen }` or `{ from }`: a `Cue` in the step's fields. */
  readonly cues: readonly string[]
  /**
   * Keys of `keys` that hold a value or `{ from }`: a time, which is a `From<Quantity>` in the step's fields (an
   * expression gives seconds), or a bare number, a `From<number>`. A path such as `times.least` names a key of a
   * map, `reached.*.of` that key in each entry of one.
   */
  readonly values: Readonly<Record<string, 'time' | 'number'>>
  /**
   * Paths in `keys` to what is an expression (`highest`, `allow.from`), with what it has to give: an `Expression`
   * in the step's fields. Left out: none.
   */
  readonly formulas?: Readonly<Record<string, Wanted>>
  /**
   * What a trial of this kind measures: columns beside `outcome`, by name; `counts-as` gives the first its
   * value. Empty: the step is no trial.
   */
  columns(step: Step): Readonly<Record<string, ValueType>>
  /**
   * Columns that are times between two presses, with what begins and what ends each: what their error is made of. Left
   * out: there are none.
   */
  ends?(step: Step): Readonly<Record<string, { readonly start: Cue['by']; readonly stop: Cue['by'] }>>
  /**
   * The values of a column that are plausible here, by the file or by the kind: one typed outside them is taken only
   * when it is confirmed. Null where any value is, or nothing is typed.
   */
  plausible(moment: StepMoment, column: string): Range | null
  /**
   * Why a value that is put right afterwards can't stand in a column, such as one that is no option; null where it
   * can. Left out: any can.
   */
  misfits?(moment: StepMoment, column: string, value: string | number): Refusal | null
  /** True for what has to come before the first trial, such as the kit check: a protocol without it is warned. */
  readonly precedes: boolean
  /** Events that the kind's chart takes: name (without the kind) to the schema of their data. */
  readonly events: Readonly<Record<string, z.ZodObject>>
  /** The kind's child chart. */
  readonly chart: StepChart
  /**
   * The events (without the kind) by which a trial is given in one act where the step stands on a sheet: the one that
   * the examiner makes, and the one that then keeps it, made with no press. Null where this step can't stand there;
   * left out: no step of the kind can.
   */
  onSheet?(step: Step): { readonly gives: string; readonly keeps: string } | null
  /** What the screen needs to draw this step now, plain data; drawn by `renderer/steps/<kind>`. */
  face(moment: StepMoment): Readonly<Record<string, unknown>>
  /** A made-up but plausible next event, or null when nothing can be done here. */
  rehearse(moment: StepMoment, random: () => number): RehearsedEvent | null
  /**
   * The ways through this step that a file can tell apart, each from its first state to its end: each option or grade;
   * a number at, below and above every one that it is compared with (`compared`, by column, in the column's unit); its
   * limit. The usual one first. That a trial may be closed (`unable`, …) is the same for all kinds and not told here.
   */
  outcomes(moment: StepMoment, compared: Compared): readonly TellingOutcome[]
}

/** Numbers that a column is compared with anywhere in the file. */
export type Compared = (column: string) => readonly number[]

export interface TellingOutcome {
  /** In short, by ids and numbers: `4.99 s`, `yes`. */
  readonly label: string
  readonly events: readonly RehearsedEvent[]
}

export interface RehearsedEvent {
  readonly event: string
  /** Milliseconds of made-up time that pass before it. */
  readonly after: number
  /** The event's data, given the stamp of the input or clock that makes it. */
  data(stamp: Stamp): Readonly<Record<string, unknown>>
}
