/**
 * What a kind of step is to the screen. Each folder beside this file default-exports one from its `index.tsx`
 * and is found by listing: nothing outside a kind's folder asks which kind a step is.
 */
import type { ComponentType } from 'react'
import type { ClockTime } from '../../protocols/runner/moment.ts'
import type { Stamp } from '../../protocols/runner/events.ts'
import type { Refusal, StepView } from '../../protocols/runner/view.ts'
import type { Signal } from '../input/sound.ts'
import type { Values } from '../words/index.ts'

/** The data of a step's event, without kind, step and place. */
export type EventData = Readonly<Record<string, unknown>>

export interface FaceProps {
  readonly step: StepView
  /** Whether a clock that runs may be seen. */
  readonly showClock: boolean
  /** Sends one of the step's events; `event` without its kind. Null once it was taken, else why not. */
  readonly send: (event: string, data: EventData) => Promise<Refusal | null>
  /** Keeps what the main key's next press of this step sends along. */
  readonly prepare: (data: EventData | null) => void
}

/** What time alone brings about: an event that is due `ms` after `from`. */
interface Due {
  readonly event: string
  readonly from: ClockTime
  readonly ms: number
}

/** A signal that is due `ms` after `from`; at once where `from` is null. */
export interface SignalDue {
  readonly signal: Signal
  readonly from: ClockTime | null
  readonly ms: number
}

interface MainWords {
  /** Key of the words for what the main key does now. */
  readonly key: string
  readonly values?: Values
  /** True where nothing is wanted of the key, though a press is still kept. */
  readonly isWaiting?: boolean
}

/** What was typed in a cell of a page: the data of the event that gives it, or what is wrong with it, in words. */
export type CellRead =
  | {
      readonly data: (confirmed: boolean) => EventData
      /** What is plausible, where the value lies outside it: it is asked for once more. */
      readonly doubt: readonly [number, number] | null
    }
  | { readonly problem: string }

/** How a kind of step is typed and shown in a cell of a page. */
export interface CellFace {
  readonly read: (typed: string, face: EventData) => CellRead
  /** What stands in the cell, as it would be typed; empty while nothing was given. */
  readonly shown: (face: EventData) => string
  /** What may be typed, in short. */
  readonly hint: (face: EventData) => string
  /** True where letters are typed: then none of them is a command. */
  readonly hasLetters: (face: EventData) => boolean
}

export interface StepFace {
  readonly kind: string
  /** True where a trial is given: something that can be closed without a result. */
  readonly isTrial: boolean
  /** Everything between the step's text and the next thing to press. */
  readonly Face: ComponentType<FaceProps>
  /** Words for what the main key does; `event` is null where it waits for something else. */
  readonly main: (step: StepView, event: string | null) => MainWords
  /** What a press of the main key sends along; null where a press alone can't do it yet. */
  readonly press: (
    event: string,
    stamp: Stamp,
    prepared: EventData | null,
    step: StepView,
  ) => EventData | null
  /** ms after a press in which another is a bounce, where presses are counted here; null: the examiner's setting. */
  readonly bounceMs: (step: StepView) => number | null
  /** Until when the main key does nothing, since a clock was just stopped. */
  readonly dead: (step: StepView) => ClockTime | null
  /** What time alone brings about from here; `now` is where a span starts that nothing else has started. */
  readonly due: (step: StepView, now: ClockTime) => Due | null
  /** True while a clock runs for the client: everything that can wait waits. */
  readonly isRunning: (step: StepView) => boolean
  /** The signals that are given while the step stands like this: planned when it comes to, called off when it leaves. */
  readonly signals: (step: StepView) => readonly SignalDue[]
  /** The form for a value that was timed elsewhere; null where the kind has none. */
  readonly Typed: ComponentType<TypedProps> | null
  /** How it is given in a cell of a page; null where it can't be. */
  readonly cell: CellFace | null
}

export interface TypedProps {
  readonly step: StepView
  readonly send: FaceProps['send']
  readonly onClose: () => void
}
