/** What a press comes to, as the event that it makes: by what the view offers at that moment, and only that. */
import type { EventBody, Stamp } from '../../../protocols/runner/events.ts'
import type { AdministrationView, SheetCell, StepView } from '../../../protocols/runner/view.ts'
import type { Command } from '../../input/keys.ts'
import type { EventData } from '../../steps/face.ts'
import { faceOf } from '../../steps/registry.ts'
import type { Intent } from './desk.ts'

/** The event of a command that needs nothing but the key; the others open a form first. */
const AT_ONCE: readonly Command[] = ['void', 'undo', 'stop', 'later']

export const isAtOnce = (command: Command): boolean => AT_ONCE.includes(command)

const EVENTS: Partial<Record<Command, readonly string[]>> = {
  void: ['voided'],
  undo: ['undone'],
  pause: ['paused'],
  stop: ['halted'],
  close: ['closed'],
  deviation: ['deviated'],
  accommodation: ['accommodated'],
  remark: ['remarked'],
  correct: ['corrected'],
  skip: ['skipped'],
  later: ['put_off'],
  put_right: ['corrected', 'relabelled', 'reattributed', 'withdrawn'],
}

/** Whether an event may be made now; a step's own by `<kind>.<event>`. */
export const offers = (view: AdministrationView, event: string): boolean =>
  view.offers.some((offer) => offer.event === event && offer.open)

/** Whether a command has something to do now. Cover and help always have. */
export function mayDo(view: AdministrationView, command: Command): boolean {
  if (command === 'typed') return view.step !== null && offers(view, `${view.step.kind}.typed`)
  const events = EVENTS[command]
  return events === undefined || events.some((event) => offers(view, event))
}

/** The event that the main key makes now, as the chart says; null where it waits. */
export const mainOffer = (view: AdministrationView): string | null =>
  view.offers.find((offer) => offer.main && offer.open)?.event ?? null

/** The part after the kind of one of this step's events; null for an event of the runner. */
export function ownEvent(step: StepView | null, event: string | null): string | null {
  if (step === null || event === null) return null
  return event.startsWith(`${step.kind}.`) ? event.slice(step.kind.length + 1) : null
}

/** The body of one of the step's own events. */
export function stepBody(step: StepView, event: string, data: EventData): EventBody {
  return { kind: `${step.kind}.${event}`, step: step.name, place: step.place, ...data }
}

/** True while the key is dead since a clock on the same page was stopped a moment ago. */
function isDead(step: StepView, stamp: Pick<Stamp, 'at' | 'clock'>): boolean {
  const dead = faceOf(step).dead(step)
  return dead !== null && dead.clock === stamp.clock && Math.abs(stamp.at - dead.at) < DEAD_MS
}

/** As long as the chart lets no press do anything after a stop. */
export const DEAD_MS = 1000

/** What the main key does now: the step's own event, or one of the runner's that needs no more than a key. */
export function mainIntent(stamp: Stamp, prepared: (step: StepView) => EventData | null): Intent {
  return (view) => {
    const event = mainOffer(view)
    if (event === 'resumed') return { kind: 'resumed' }
    if (event === 'finished') return { kind: 'finished' }
    if (event === 'sheet_left' && view.sheet !== null) {
      return { kind: 'sheet_left', section: view.sheet.section, place: view.sheet.place }
    }
    if (event === 'rating_ended') return { kind: 'rating_ended' }
    const { step } = view
    const own = ownEvent(step, event)
    if (step === null || own === null || isDead(step, stamp)) return null
    const data = faceOf(step).press(own, stamp, prepared(step), step)
    return data === null ? null : stepBody(step, own, data)
  }
}

/** What a command does that needs nothing but its key. */
export function commandIntent(command: Command, stamp: Stamp, cell: SheetCell | null): Intent {
  return (view) => {
    if (!mayDo(view, command)) return null
    if (command === 'undo') return { kind: 'undone' }
    if (command === 'stop') return { kind: 'halted', stamp }
    const { sheet, step } = view
    if (command === 'later') return putOff(step)
    if (command !== 'void') return null
    if (step !== null) return { kind: 'voided', step: step.name, place: step.place, stamp }
    return sheet === null || cell === null
      ? null
      : { kind: 'voided', step: cell.step, place: cell.place, stamp: null }
  }
}

/** Whoever rates at a step does so another day. */
function putOff(step: StepView | null): EventBody | null {
  const rater = step?.passes.find(({ list }) => list === 'raters')?.id ?? null
  return rater === null ? null : { kind: 'put_off', rater }
}

export function happeningIntent(happening: string, stamp: Stamp): Intent {
  return ({ step }) =>
    step === null ? null : { kind: 'happened', step: step.name, place: step.place, happening, stamp }
}

/** An event that time alone has brought about, for the very step and place that it was due at. */
export function dueIntent(
  at: { readonly step: string; readonly place: string },
  event: string,
  data: EventData,
): Intent {
  return ({ step }) =>
    step === null || step.name !== at.step || JSON.stringify(step.place) !== at.place
      ? null
      : stepBody(step, event, data)
}

/** A trial that runs breaks off: the focus went, the machine slept, the page was loaded anew. */
export function breakIntent(cause: 'restart' | 'focus_lost' | 'suspended' | 'clock_changed'): Intent {
  return ({ step }) => (step !== null && faceOf(step).isRunning(step) ? { kind: 'interrupted', cause } : null)
}
