/** What a kind of step or section contributes to the chart. All of it is data and pure functions. */
import type { Expression } from '../language/expressions/types.ts'
import type { Draw, From, Protocol, Section } from '../language/model.ts'
import type { ClientFacts } from '../client.ts'
import type { Place } from './events.ts'
import type { ClockTime, StepMoment } from './moment.ts'
import type { Deviation, Refusal, Trial } from './view.ts'

/** The step ends and a trial in flight stands with its outcome. */
export const LEAVE = '=leave'
/** A trial in flight is void; the step begins again as long as void trials may be made good. */
export const AGAIN = '=again'

/** The data of a step's event, without `kind`, `step` and `place`, as the kind's schema lets it through. */
export type Data = Readonly<Record<string, unknown>>

/** What a move does beside changing the state of the kind's chart. */
export interface Effect {
  /** The kind's own notes until the step ends; they replace the ones before. */
  readonly local?: Data
  /** A trial begins with this event. */
  readonly begins?: { readonly input: Trial['input']; readonly stamps: readonly number[] }
  /** What becomes known of the trial in flight. */
  readonly trial?: Partial<Pick<Trial, 'readings' | 'stamps' | 'input' | 'outcome'>>
  /** The key is dead for a second from here. */
  readonly dead?: ClockTime
  /** When the trial ended, for rests that count from it. */
  readonly ends?: ClockTime
  readonly deviates?: readonly Pick<Deviation, 'code' | 'what' | 'reason' | 'norms'>[]
  /** Why the trial is void; with `AGAIN`. */
  readonly void?: VoidCause
}

/** Why a trial is void: a happening's name or what broke it off. */
export interface VoidCause {
  readonly happening: string | null
  readonly cause: string
}

export interface StepMove {
  /** A state of the kind's chart, `LEAVE` or `AGAIN`. */
  readonly to: string
  /** Which of several moves for one event this is. */
  readonly when?: (moment: StepMoment, data: Data) => boolean
  /** Why the event is not taken now. */
  readonly refuses?: (moment: StepMoment, data: Data) => Refusal | null
  readonly does?: (moment: StepMoment, data: Data) => Effect
  /** What the main key does here. */
  readonly main?: boolean
  /** Made by the clock outside, not by the examiner: it isn't offered, and undo takes it back with the act before. */
  readonly automatic?: boolean
}

export interface StepState {
  /**
   * A trial is in flight: `running` while it is being given (an interruption voids it), `held` once it is over
   * and only waits to be kept (nothing can break it any more).
   */
  readonly flight?: 'running' | 'held'
  /** True where a trial that went wrong can be voided before any value of it is known. */
  readonly voidable?: boolean
  /** Event name (without the kind) to its moves; the first whose `when` holds is meant. */
  readonly on: Readonly<Record<string, readonly StepMove[]>>
}

export interface StepChart {
  readonly initial: string
  readonly states: Readonly<Record<string, StepState>>
  /** True where there is nothing to do here and the step is passed over, such as a rest after nothing. */
  readonly idle?: (moment: StepMoment) => boolean
}

/** The order of a section's passes in one place, as recorded, with the rule that decided it. */
export interface ListOrder {
  readonly section: string
  /** The place around the section. */
  readonly place: Place
  readonly items: readonly string[]
  readonly rule: string
}

/** A pass of a section: an item's id, or the pass number of a repeat. */
export type PassId = string | number

/** What a section can know of the administration where it stands. */
export interface SectionMoment {
  readonly section: Section
  /** The place around the section, its own pass left out. */
  readonly around: Place
  /** The pass at hand, null before the first. */
  readonly pass: PassId | null
  /** Which pass it is, from 1, where an item may come more than once; 0 before the first. */
  readonly turn: number
  /** How the list is drawn; null where it isn't. */
  readonly draw: Draw | null
  /** What was drawn from the same bag before, in that order. */
  drawn(): readonly string[]
  /** The passes up to the one at hand, it included, as they were taken, where an item may come more than once. */
  path(): readonly PassId[]
  readonly facts: ClientFacts
  /** The order that was recorded for the section in this place. */
  readonly order: ListOrder | null
  /** Ids of the list that the section goes through; empty for a repeat. */
  readonly items: readonly string[]
  /** Judges a condition of the section as seen from one of its passes, or from around it; null: no answer. */
  holds(condition: Expression, pass: PassId | null): boolean | null
  /** A text that an expression of the section gives around it; null where it has no value here. */
  text(expression: Expression): string | null
  /** A whole number of the file; null where its expression has no value here. */
  count(from: From<number>): number | null
}

/** What decides an order where the file leaves it to nobody and no fact of the client does. */
export interface Chance {
  /** A number from 0 up to 1. */
  random(): number
  /** The orders that were balanced for this section in earlier administrations of the protocol. */
  earlier(section: string): readonly (readonly string[])[]
}

/** Which of a section's parts is given: the name of one; null: none. */
export interface Choice {
  readonly part: string | null
  /** True where that can't be told, since a condition has no answer. */
  readonly unclear: boolean
}

export interface SectionChart {
  /** True when an `ordered` event has to say in which order the passes come. */
  ordered(section: Section, draws: Protocol['draws']): boolean
  /** The order as the host records it by itself; null when the examiner has to choose. */
  order(moment: SectionMoment, chance: Chance): Pick<ListOrder, 'items' | 'rule'> | null
  /** Why a recorded order isn't one for this section. */
  refuses(moment: SectionMoment, items: readonly string[]): Refusal | null
  /** The pass after the one at hand; null when the section is over. */
  next(moment: SectionMoment): PassId | null
  /**
   * Passes between the one at hand and the next that are left out since their condition has no answer; null among them
   * stands for the section, which could not tell how to begin.
   */
  unclear(moment: SectionMoment, next: PassId | null): readonly (PassId | null)[]
  /** All passes that are due after the one at hand, as things stand. */
  due(moment: SectionMoment): readonly PassId[]
  /** How many passes there are; null where that shows only later. */
  of(moment: SectionMoment): number | null
  /** Items that can't be given at all, with what becomes of them. */
  leftOut(moment: SectionMoment): readonly string[]
}
