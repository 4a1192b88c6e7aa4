/**
 * Everything that can happen in an administration, as its log keeps it. An act of the examiner and the event
 * it becomes have the same body. State is the replay of these and nothing else.
 *
 * Events of the runner itself are the closed union `runnerEvent`. Events of a step are named
 * `<kind>.<event>` and their data belongs to the kind (`protocols/steps/<kind>`).
 */
import { z } from 'zod'
import { civilDate, clientFacts } from '../client.ts'
import { CLOSINGS } from '../language/model.ts'

const id = z.uuid()
const name = z.string().regex(/^[a-z][a-z0-9_]*$/)
const reason = z.string().trim().min(1).max(1000)

/** Which pass of each loop around a step: loop name to item id, or to the pass number of a repeat (from 1). */
export const place = z.record(name, z.union([z.string(), z.int().min(1)]))
export type Place = z.infer<typeof place>

/** An input event's own time stamp: `at` in ms on the monotonic clock named by `clock` (one per page load). */
export const stamp = z.strictObject({
  at: z.number().min(0),
  clock: z.string().min(1).max(64),
  input: z.enum(['key', 'pointer', 'pedal']),
  /** ms from the input to the moment its handler ran; large values are noted with the trial. */
  late: z.number(),
})
export type Stamp = z.infer<typeof stamp>

/** The answers to a precaution or a restriction: nothing is pre-ticked, none is a default. */
export const clearance = z.discriminatedUnion('answer', [
  z.strictObject({ answer: z.literal('not_present') }),
  z.strictObject({ answer: z.literal('cleared'), by: z.string().min(1).max(200), on: civilDate }),
  z.strictObject({ answer: z.literal('not_given') }),
  z.strictObject({ answer: z.literal('not_known') }),
])
export type Clearance = z.infer<typeof clearance>

export const visitConditions = z.strictObject({
  splint: z.string().max(300),
  glasses: z.enum(['worn', 'not_worn', 'none', 'unknown']),
  hearingAid: z.enum(['worn', 'not_worn', 'none', 'unknown']),
  seat: z.string().max(200),
  helper: z.string().max(200),
  sinceDose: z.string().max(200),
  tiredness: z.int().min(0).max(10).nullable(),
})
export type VisitConditions = z.infer<typeof visitConditions>

export const kitPiece = z.strictObject({
  id,
  item: name,
  ownName: z.string().min(1).max(200),
  /** Condition name to option id, for the conditions that the kit sets. */
  conditions: z.record(name, z.string()),
  unit: z.string().max(40),
  lastCheck: civilDate.nullable(),
  nextCheck: civilDate.nullable(),
})
export type KitPiece = z.infer<typeof kitPiece>

const opened = z.strictObject({
  kind: z.literal('opened'),
  protocol: z.strictObject({
    id: z.string(),
    version: z.string(),
    /** SHA-256 of the protocol's files; the files themselves are kept under it. */
    hash: z.string().regex(/^[0-9a-f]{64}$/),
    language: z.string(),
    wording: z.string().nullable(),
    from: z.enum(['library', 'clinic']),
  }),
  program: z.string(),
  rehearsal: z.boolean(),
  visit: id.nullable(),
  on: civilDate,
  examiner: z.strictObject({ id, name: z.string() }),
})
const assigned = z.strictObject({
  kind: z.literal('assigned'),
  client: id.nullable(),
  facts: clientFacts,
  reason: reason.nullable(),
})
const prepared = z.strictObject({
  kind: z.literal('prepared'),
  precautions: z.record(z.string(), clearance),
  restrictions: z.array(z.strictObject({ what: z.string(), clearance })),
  painNow: z.int().min(0).max(10).nullable(),
  visit: visitConditions,
  kit: z.array(kitPiece),
  /** Condition name to option id or literal, as they stand at this administration. */
  conditions: z.record(name, z.string()),
})
const confirmed = z.strictObject({ kind: z.literal('confirmed'), what: z.enum(['start', 'resume']) })
const clock = z.strictObject({
  kind: z.literal('clock'),
  clock: z.string(),
  resolutionMs: z.number().min(0),
  isolated: z.boolean(),
})
/** What a signal tells: the next press starts the clock, the clock runs, half of the time is over, all of it is. */
export const SIGNALS = ['ready', 'go', 'half', 'end'] as const
/**
 * A signal was given: when it could be heard, by the clock of the sound's own output, or seen, by the frame that showed
 * it. `at` is in ms on the monotonic clock that `clock` names.
 */
const signalled = z.strictObject({
  kind: z.literal('signalled'),
  step: name,
  place,
  signal: z.enum(SIGNALS),
  by: z.enum(['sound', 'sight']),
  at: z.number().min(0),
  clock: z.string().min(1).max(64),
})
const ordered = z.strictObject({
  kind: z.literal('ordered'),
  section: name,
  place,
  items: z.array(z.string()),
  /** The rule that decided, such as `dominant-first`, `less-affected-first`, `right-first`. */
  rule: z.string(),
})
const ruled = z.strictObject({ kind: z.literal('ruled'), rule: name, place, apply: z.boolean() })
/** What a rule or a section's condition had cut off, and would not by now, is given after all. */
const takenUp = z.strictObject({ kind: z.literal('taken_up'), rule: name, place })
const paused = z.strictObject({ kind: z.literal('paused'), reason })
const resumed = z.strictObject({ kind: z.literal('resumed') })
const halted = z.strictObject({ kind: z.literal('halted'), stamp: stamp.nullable() })
const settled = z.strictObject({
  kind: z.literal('settled'),
  ends: z.enum(['nothing', 'trial', 'hand', 'test', 'visit']),
  reason,
  pain: z.int().min(0).max(10).nullable(),
  done: z.string().max(1000),
})
/** A rater's grades come another day: what is due of that rater stays pending. */
const putOff = z.strictObject({ kind: z.literal('put_off'), rater: name })
/** The grades of a rater that are still to come are given from here on, by whoever the event is of. */
const ratingBegun = z.strictObject({ kind: z.literal('rating_begun'), rater: name })
const ratingEnded = z.strictObject({ kind: z.literal('rating_ended') })
const interrupted = z.strictObject({
  kind: z.literal('interrupted'),
  cause: z.enum(['restart', 'focus_lost', 'suspended', 'clock_changed']),
})
const reopened = z.strictObject({
  kind: z.literal('reopened'),
  afterSeconds: z.number().min(0),
  choice: z.enum(['go_on', 'practice_again', 'close']),
})
const undone = z.strictObject({ kind: z.literal('undone') })
const deviated = z.strictObject({
  kind: z.literal('deviated'),
  what: z.string().trim().min(1).max(500),
  reason,
  norms: z.enum(['kept', 'caution', 'withheld']),
})
const accommodated = z.strictObject({
  kind: z.literal('accommodated'),
  /** One of the protocol's accommodations; null: something else, which then is a modification. */
  accommodation: name.nullable(),
  what: z.string().trim().min(1).max(500),
  reason,
})
const remarked = z.strictObject({ kind: z.literal('remarked'), text: z.string().trim().min(1).max(2000) })
const closed = z.strictObject({
  kind: z.literal('closed'),
  /** The trial or item at hand, or a whole pass of a section around it (`hand`). */
  what: z.string(),
  place,
  outcome: z.enum(CLOSINGS),
  reason: z.string().max(1000),
})
/** A page is left, once every cell of it has a value or an outcome. */
const sheetLeft = z.strictObject({ kind: z.literal('sheet_left'), section: name, place })
const skipped = z.strictObject({ kind: z.literal('skipped'), step: name, place, reason })
const voided = z.strictObject({
  kind: z.literal('voided'),
  step: name,
  place,
  /** One key voids; the reason follows in `explained`. */
  stamp: stamp.nullable(),
})
const explained = z.strictObject({
  kind: z.literal('explained'),
  trial: id,
  happening: name,
  remark: z.string().max(1000),
})
const happened = z.strictObject({
  kind: z.literal('happened'),
  step: name,
  place,
  happening: name,
  stamp: stamp.nullable(),
})
const corrected = z.strictObject({
  kind: z.literal('corrected'),
  trial: id,
  column: name,
  value: z.union([z.number(), z.string()]),
  /** True when a value outside what is plausible was asked for again. */
  confirmed: z.boolean().optional(),
  reason,
})
const relabelled = z.strictObject({ kind: z.literal('relabelled'), reason })
const reattributed = z.strictObject({
  kind: z.literal('reattributed'),
  examiner: z.strictObject({ id, name: z.string() }).nullable(),
  on: civilDate.nullable(),
  reason,
})
const withdrawn = z.strictObject({ kind: z.literal('withdrawn'), reason })
const finished = z.strictObject({ kind: z.literal('finished') })
const noted = z.strictObject({ kind: z.literal('noted'), text: z.string().max(5000) })

const runnerEvent = z.discriminatedUnion('kind', [
  opened,
  assigned,
  prepared,
  confirmed,
  clock,
  signalled,
  ordered,
  ruled,
  takenUp,
  paused,
  resumed,
  halted,
  settled,
  putOff,
  ratingBegun,
  ratingEnded,
  interrupted,
  reopened,
  undone,
  deviated,
  accommodated,
  remarked,
  closed,
  sheetLeft,
  skipped,
  voided,
  explained,
  happened,
  corrected,
  relabelled,
  reattributed,
  withdrawn,
  finished,
  noted,
])
export type RunnerEvent = z.infer<typeof runnerEvent>

/** An event of a step: `kind` is `<step kind>.<event>`; the data beside step and place are the kind's. */
const stepEvent = z.looseObject({
  kind: z.string().regex(/^[a-z]+\.[a-z_]+$/),
  step: name,
  place,
})

export const eventBody = z.union([runnerEvent, stepEvent])
export type EventBody = z.infer<typeof eventBody>

/** An event as the log gives it back to the domain. */
export interface Recorded {
  readonly id: string
  /** Wall time, RFC 3339 with offset: for the record only, never for durations of trials. */
  readonly at: string
  readonly user: string
  readonly body: EventBody
}
