/** What the chart holds in its context: all that is known of an administration. */
import type { StateValue } from 'xstate'
import type { ClientFacts } from '../client.ts'
import type { Closing } from '../language/model.ts'
import type { ListOrder, PassId } from './chart-parts.ts'
import type { EventBody, Place, RunnerEvent } from './events.ts'
import { type Grown, nothingGrown } from './grown.ts'
import type { ClockTime } from './moment.ts'
import type { AdministrationView, Correction, Deviation, Trial } from './view.ts'

type Body<Kind extends RunnerEvent['kind']> = Extract<RunnerEvent, { readonly kind: Kind }>

/** The step at hand since it began in its place. */
export interface Visit {
  readonly step: string
  readonly place: Place
  /** Trials that were given here and are void, for whatever cause. */
  readonly attempts: number
  /** Void trials that the examiner declared here: those count against the step's `voids`. */
  readonly voids: number
  /** State of the kind's own chart. */
  readonly state: string
  /** The kind's own notes. */
  readonly local: Readonly<Record<string, unknown>>
  /** Signals that were given before the trial that they belong to has begun. */
  readonly signals?: NonNullable<Trial['signals']>
}

/** The step that a repeated practice goes back to, with the trial that waits there to be kept. */
interface Returning {
  readonly visit: Visit
  readonly flight: Trial | null
}

export interface Ending extends ClockTime {
  readonly step: string
  readonly place: Place
}

export interface Judged {
  readonly rule: string
  readonly place: Place
  /** What a rule's condition said, or the pass that a section took next. */
  readonly verdict: boolean | PassId | null
  readonly trials: number
}

/** The rows that a rule made of what it cut off. */
export interface Cut {
  readonly rule: string
  readonly place: Place
  /** Ids of the trials. */
  readonly rows: readonly string[]
}

export interface State {
  /** Id of the last event taken: what tells that the chart took it. */
  readonly last: string
  readonly opened: Body<'opened'> | null
  readonly openedAt: string
  readonly finishedAt: string | null
  readonly client: string | null
  readonly facts: ClientFacts | null
  readonly examiner: string
  readonly on: string
  readonly prepared: Body<'prepared'> | null
  readonly clock: Body<'clock'> | null
  /** True once the first step was reached. */
  readonly begun: boolean
  /** True while going on waits for the decision that a long gap asks for. */
  readonly gap: boolean
  readonly because: string | null
  readonly visit: Visit | null
  /** The place: the passes that are going on. */
  readonly place: Place
  readonly orders: Grown<ListOrder>
  /** The node at hand: a step, a rule, a section that waits for its order; `:end` at the end. */
  readonly at: string
  /** Hands that are closed for the rest of the administration, with the outcome of what was due. */
  readonly closedHands: Readonly<Record<string, Closing | 'stopped'>>
  /** Raters whose grades come another day, by their ids. */
  readonly putOff: readonly string[]
  /** The rater whose grades are being given after the test; null otherwise. */
  readonly rating: string | null
  /** The times at which grades were given after the test. */
  readonly ratings: Grown<{ readonly rater: string; readonly by: string; readonly at: string }>
  readonly trials: Grown<Trial>
  /** How many trials and rows the last event has made: each has an id of its own. */
  readonly made: { readonly event: string; readonly count: number }
  readonly flight: Trial | null
  /** True while the trial in flight is being given; false once it only waits to be kept. */
  readonly running: boolean
  readonly dead: ClockTime | null
  /** When trials ended, void ones too: rests count from there. */
  readonly ends: Grown<Ending>
  /** The pass that the section at its turn takes next; null where it is over. */
  readonly next: PassId | null
  /** The rule judged last: what it said. */
  readonly verdict: boolean | null
  /** Where going back to the practice came from; null otherwise. */
  readonly returning: Returning | null
  /** The section that what is missing is given in, for the time being; then it ends. Null outside of it: the test. */
  readonly detour: { readonly section: string | null } | null
  readonly cuts: Grown<Cut>
  /** Every judgement of a rule or of a section's condition, with how many trials there were then: what a correction is held against. */
  readonly judged: Grown<Judged>
  readonly rules: Grown<Omit<AdministrationView['rules'][number], 'text'>>
  readonly stops: Grown<AdministrationView['stops'][number]>
  readonly pauses: Grown<AdministrationView['pauses'][number]>
  readonly deviations: Grown<Deviation>
  readonly corrections: Grown<Correction>
  readonly remarks: Grown<AdministrationView['remarks'][number]>
  readonly note: string | null
  readonly wouldDiffer: AdministrationView['wouldDiffer']
  /** Steps left behind, for telling how far along it is. */
  readonly passed: number
}

export const BEGINNING: State = {
  last: '',
  opened: null,
  openedAt: '',
  finishedAt: null,
  client: null,
  facts: null,
  examiner: '',
  on: '',
  prepared: null,
  clock: null,
  begun: false,
  gap: false,
  because: null,
  visit: null,
  place: {},
  orders: nothingGrown(),
  at: '',
  closedHands: {},
  putOff: [],
  rating: null,
  ratings: nothingGrown(),
  trials: nothingGrown(),
  made: { event: '', count: 0 },
  flight: null,
  running: false,
  dead: null,
  ends: nothingGrown(),
  next: null,
  verdict: null,
  returning: null,
  detour: null,
  cuts: nothingGrown(),
  judged: nothingGrown(),
  rules: nothingGrown(),
  stops: nothingGrown(),
  pauses: nothingGrown(),
  deviations: nothingGrown(),
  corrections: nothingGrown(),
  remarks: nothingGrown(),
  note: null,
  wouldDiffer: [],
  passed: 0,
}

/** Where the chart stands. Kept in memory only; what is stored are the events. */
export interface Snapshot {
  readonly value: StateValue
  readonly context: State
}

/** An event as the chart meets it. */
export interface Happened<Of extends EventBody = EventBody> {
  readonly type: string
  /** True when more than the protocol's longest gap has passed since the event before it. */
  readonly late: boolean
  readonly id: string
  readonly at: string
  readonly user: string
  readonly body: Of
}
