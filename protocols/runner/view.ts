/**
 * What a screen may know of an administration in progress: plain data worked out from the state, checked at
 * both ends of the contract. Texts of the protocol are already in the words it is given by.
 */
import { z } from 'zod'
import { clientFacts } from '../client.ts'
import { OUTCOMES } from '../language/model.ts'
import { clearance, kitPiece, place, SIGNALS, visitConditions } from './events.ts'

/**
 * A value of one trial: `typed` by hand or timed by an input; `confirmed` where it lies outside what is plausible and
 * was kept all the same; `corrected` keeps what stood there first.
 */
const reading = z.strictObject({
  value: z.union([z.number(), z.string()]).nullable(),
  unit: z.string().nullable(),
  over: z.boolean(),
  typed: z.boolean(),
  confirmed: z.boolean(),
  /** Where the value is the id of one of several options: all of them in words, as they were put. */
  options: z.record(z.string(), z.string()).optional(),
  corrected: z
    .strictObject({ first: z.union([z.number(), z.string()]).nullable(), reason: z.string() })
    .nullable(),
})
export type Reading = z.infer<typeof reading>

export const trial = z.strictObject({
  /** Id of the event that began it. */
  id: z.uuid(),
  step: z.string(),
  place,
  /** Which attempt at this step in this place, void ones counted, from 1. */
  attempt: z.int(),
  practice: z.boolean(),
  status: z.enum(['running', 'standing', 'void']),
  outcome: z.enum(OUTCOMES).nullable(),
  readings: z.record(z.string(), reading),
  /** How the times came about: key, pointer, pedal or typed; null where nothing was timed. */
  input: z.enum(['key', 'pointer', 'pedal', 'typed']).nullable(),
  stamps: z.array(z.number()),
  /** How long, at worst, a press waited for the program, in ms: no part of any time, but told when it is large. */
  lateMs: z.number(),
  /** The signals that were given with it, with the moments, in ms on the trial's clock, at which they were heard or seen. */
  signals: z
    .array(z.strictObject({ signal: z.enum(SIGNALS), by: z.enum(['sound', 'sight']), at: z.number() }))
    .optional(),
  happenings: z.array(z.string()),
  void: z
    .strictObject({
      happening: z.string().nullable(),
      remark: z.string(),
      valueSeen: z.boolean(),
      cause: z.string(),
      /** When it was declared, and by whom. */
      at: z.string(),
      by: z.string(),
    })
    .nullable(),
  remark: z.string(),
  at: z.string(),
})
export type Trial = z.infer<typeof trial>

/** One thing that may be done now, as the chart says: screens offer these and nothing else. */
const offer = z.strictObject({
  /** Kind of the event that doing it makes. */
  event: z.string(),
  /** False where the chart waits (a rest not over, a key still dead): shown, not offered. */
  open: z.boolean(),
  /** The one that the main key does. */
  main: z.boolean(),
})

const happeningView = z.strictObject({
  name: z.string(),
  seen: z.string(),
  do: z.string().nullable(),
  becomes: z.enum(['go-on', 'tally', 'void', 'stop']),
  key: z.string().nullable(),
})

/**
 * Which pass of a loop this is, as data: the screen has the words. `text` is the item's own text where the
 * protocol gives one; sides of `hands` have none.
 */
export const pass = z.strictObject({
  loop: z.string(),
  /** `hands`, another list, or null where a repeat counts. */
  list: z.string().nullable(),
  /** The item's id; null where a repeat counts. */
  id: z.string().nullable(),
  number: z.int(),
  /** How many passes there are as things stand; null where that shows only later. */
  of: z.int().nullable(),
  text: z.string().nullable(),
})
export type Pass = z.infer<typeof pass>

/**
 * A departure from the protocol. `what` is what the examiner wrote where the code is `told`, `accommodation`
 * or `modification`, else the name of the step, section or piece that the code speaks of.
 */
export const deviation = z.strictObject({
  code: z.enum([
    'told',
    'accommodation',
    'modification',
    'skipped',
    'rest_cut',
    'kit_problem',
    'went_on_late',
    'hands_relabelled',
    'grade_above',
  ]),
  what: z.string(),
  reason: z.string(),
  norms: z.enum(['kept', 'caution', 'withheld']),
  at: z.string(),
  by: z.string(),
})
export type Deviation = z.infer<typeof deviation>

/** Something put right afterwards: what stood there first, what stands there now. */
export const correction = z.strictObject({
  code: z.enum(['value', 'hands', 'examiner', 'date', 'client']),
  /** The trial whose value it is; null for the others. */
  trial: z.uuid().nullable(),
  column: z.string().nullable(),
  first: z.string(),
  now: z.string(),
  reason: z.string(),
  at: z.string(),
  by: z.string(),
})
export type Correction = z.infer<typeof correction>

const figureView = z.strictObject({
  /** The drawing itself, as SVG text, for the hand at hand: the screen has no way to the protocol's files. */
  drawing: z.string(),
  /** What it shows, for those who can't see it; empty where the file says nothing. */
  words: z.string(),
  /** The hand that it shows; null where both look the same. */
  hand: z.enum(['left', 'right']).nullable(),
})

const stepView = z.strictObject({
  name: z.string(),
  kind: z.string(),
  /** State of the kind's own chart, such as `waiting`, `running`. */
  state: z.string(),
  place,
  /** The loops around the step, outermost first, for words such as `Right hand`, `Trial 2 of 3`. */
  passes: z.array(pass),
  practice: z.boolean(),
  text: z.string().nullable(),
  maySay: z.array(z.string()),
  figure: figureView.nullable(),
  happenings: z.array(happeningView),
  /** The levels of a ladder around the step that were given before, in that order, and whether each was accepted. */
  levels: z
    .array(z.strictObject({ id: z.string(), text: z.string().nullable(), accepted: z.boolean().nullable() }))
    .optional(),
  /** The kind's own data; `renderer/steps/<kind>` knows its shape. */
  face: z.record(z.string(), z.unknown()),
})
export type StepView = z.infer<typeof stepView>

/** One trial on a page that is given as a whole. */
const sheetCell = z.strictObject({
  step: z.string(),
  kind: z.string(),
  place,
  /** The loops on the page around it, outermost first. */
  passes: z.array(pass),
  text: z.string().nullable(),
  figure: figureView.nullable(),
  /** The kind's own event that gives it, without the kind. */
  gives: z.string(),
  /** The kind's own data, as if the step were at hand. */
  face: z.record(z.string(), z.unknown()),
  /** The trial that stands for it; null while it is open. */
  trial: z.uuid().nullable(),
  /** False where the order of the page is fixed and an earlier pass has open cells. */
  inTurn: z.boolean(),
})
export type SheetCell = z.infer<typeof sheetCell>

/** A section that is given on one page. */
const sheetView = z.strictObject({
  section: z.string(),
  place,
  /** The loops around the page, outermost first. */
  passes: z.array(pass),
  /** In the order of the protocol. */
  cells: z.array(sheetCell),
})
export type SheetView = z.infer<typeof sheetView>

const ruleView = z.strictObject({
  rule: z.string(),
  place,
  did: z.enum(['ended', 'credited', 'noted', 'nothing', 'asked', 'taken_up']),
  text: z.string(),
})

export const administrationView = z.strictObject({
  id: z.uuid(),
  protocol: z.strictObject({
    id: z.string(),
    version: z.string(),
    title: z.string(),
    wording: z.string().nullable(),
    /** Where it was read from: with the id this is how the screen asks for its card. */
    from: z.enum(['library', 'clinic']),
  }),
  rehearsal: z.boolean(),
  /** Who it is given to; null in a rehearsal. */
  client: z.uuid().nullable(),
  facts: clientFacts.nullable(),
  examiner: z.string(),
  on: z.string(),
  /** `rating`: grades that were put off are given after the end. `stale`: reopened after the protocol's longest gap; a choice is due. */
  phase: z.enum([
    'preparing',
    'confirming',
    'giving',
    'paused',
    'halted',
    'stale',
    'finished',
    'rating',
    'withdrawn',
  ]),
  /** Why it waits, such as the pause's reason or that it was interrupted. */
  because: z.string().nullable(),
  firstHand: z.strictObject({ hand: z.string(), rule: z.string() }).nullable(),
  step: stepView.nullable(),
  /** The page that is being filled in; then no step is at hand. */
  sheet: sheetView.nullable(),
  offers: z.array(offer),
  /** A rule that asks before it acts. */
  asking: z.strictObject({ rule: z.string(), place, text: z.string() }).nullable(),
  /** A section whose order is the examiner's to choose: what an `ordered` event with the rule `chosen` names. */
  choosing: z
    .strictObject({
      section: z.string(),
      place,
      /** `hands`, or the list that the items are of. */
      list: z.string(),
      items: z.array(z.string()),
      /** Item to its own text, where the protocol gives one. */
      texts: z.record(z.string(), z.string()),
    })
    .nullable(),
  /** Void trials whose reason has not been given yet; asked after the trial, due before the end. */
  unexplained: z.array(z.uuid()),
  /** The reasons that a void trial may be given, built-in ones included; also when no step is at hand. */
  voidReasons: z.array(z.strictObject({ name: z.string(), seen: z.string() })),
  /** Wall time of the last event taken: how long a reopened administration has waited. */
  lastAt: z.string(),
  trials: z.array(trial),
  rules: z.array(ruleView),
  deviations: z.array(deviation),
  corrections: z.array(correction),
  /**
   * Where one may rate another day: each of those who rate, with how many grades are still to come and when, and by
   * whom, grades were given after the end. Else empty.
   */
  raters: z.array(
    z.strictObject({
      id: z.string(),
      text: z.string(),
      toCome: z.int(),
      later: z.array(z.strictObject({ by: z.string(), at: z.string() })),
    }),
  ),
  /** Stops for the client's sake: what they ended, why, pain 0 to 10 and what was done. */
  stops: z.array(
    z.strictObject({
      ends: z.enum(['nothing', 'trial', 'hand', 'test', 'visit']),
      reason: z.string(),
      pain: z.int().nullable(),
      done: z.string(),
      at: z.string(),
      by: z.string(),
    }),
  ),
  /** `to` is when it went on, or was cut; null while it is paused. */
  pauses: z.array(
    z.strictObject({ reason: z.string(), from: z.string(), to: z.string().nullable(), by: z.string() }),
  ),
  remarks: z.array(z.strictObject({ text: z.string(), at: z.string(), by: z.string() })),
  precautions: z.array(z.strictObject({ id: z.string(), ask: z.string(), why: z.string().nullable() })),
  prepared: z
    .strictObject({
      precautions: z.record(z.string(), clearance),
      restrictions: z.array(z.strictObject({ what: z.string(), clearance })),
      painNow: z.int().nullable(),
      visit: visitConditions,
      kit: z.array(kitPiece),
      conditions: z.record(z.string(), z.string()),
    })
    .nullable(),
  note: z.string().nullable(),
  /** Rules and sections that would have judged otherwise after a correction. */
  wouldDiffer: z.array(z.strictObject({ rule: z.string(), place })),
  /** Those of them by which something was not given that now is missing: at the end `taken_up` has it given. */
  missing: z.array(z.strictObject({ rule: z.string(), place })),
  /** How far along: steps passed of steps due on the way as it stands now. */
  progress: z.strictObject({ passed: z.int(), due: z.int() }),
})
export type AdministrationView = z.infer<typeof administrationView>

/** Why an act was not taken; nothing was changed and nothing written. */
export const refusal = z.strictObject({
  refused: z.string(),
  /** Values for the sentence that `renderer/words` has for the code. */
  detail: z.record(z.string(), z.union([z.string(), z.number()])),
})
export type Refusal = z.infer<typeof refusal>
