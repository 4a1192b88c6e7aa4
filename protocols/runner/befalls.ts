/** What can befall any step: happenings, a void, a trial closed without a result, the script left. */
import type { Happening, Outcome } from '../language/model.ts'
import { type StepState, type VoidCause } from './chart-parts.ts'
import type { Stamp } from './events.ts'
import { furtherOf, voidWithParent } from './further-readings.ts'
import { grow } from './grown.ts'
import type { Happened, State } from './state.ts'
import { leaving, misplaced, type StepGround } from './step-ground.ts'
import { along, both, type Change, type Law, type Transition, transition } from './transitions.ts'
import { addRows, breakOff, reasonIn, stand } from './trials.ts'
import { refuse } from './refuse.ts'

/** True while a void trial of the step may still be made good. */
const mayRepeat = (at: StepGround, state: State): boolean =>
  at.step.voids === null || (state.visit?.voids ?? 0) < at.step.voids

export function happeningOf(at: Pick<StepGround, 'protocol'>, event: Happened): Happening | null {
  const { body } = event
  if (!('happening' in body)) return null
  return at.protocol.happenings.find(({ name }) => name === body.happening) ?? null
}

/** Transitions of a state of a kind's chart for `voided` and `happened`. */
export function mishaps(at: StepGround, state: StepState): Record<string, Transition[]> {
  const voidable = state.flight !== undefined || state.voidable === true
  const byKey = voidable ? voids(at, state, {}, () => ({ happening: null, cause: 'examiner' })) : []
  const becomes = (event: Happened) => happeningOf(at, event)?.becomes
  const byHappening = voidable
    ? voids(at, state, { when: (_state, event) => becomes(event) === 'void' }, (event) => ({
        happening: happeningOf(at, event)?.name ?? null,
        cause: 'happening',
      }))
    : []
  const seen = transition(
    null,
    { when: (_state, event) => ['tally', 'go-on'].includes(becomes(event) ?? ''), refuses: misplaced },
    (now, event) => {
      const happening = happeningOf(at, event)
      const { flight } = now
      if (flight === null || happening === null) return {}
      return { flight: { ...flight, happenings: [...flight.happenings, happening.name] } }
    },
  )
  return { voided: byKey, happened: state.flight === undefined ? byHappening : [...byHappening, seen] }
}

/** A trial that is void: it is given again while that is allowed, else the step ends without it. */
function voids(
  at: StepGround,
  state: StepState,
  law: Law,
  cause: (event: Happened) => VoidCause,
): Transition[] {
  if (furtherOf(at) !== null) return voidWithParent(at, law, cause)
  const breaks: Change = both(
    (now, event) =>
      breakOff(at, now, event, { ...cause(event), valueSeen: state.flight === 'held', counts: true }),
    endedByKey,
  )
  const whole: Law = { ...law, refuses: misplaced }
  const ifAgain = (again: boolean): Law => ({
    ...whole,
    when: (now, event) => law.when?.(now, event) !== false && mayRepeat(at, now) === again,
  })
  const noMore: Change = (now, event) => addRows(at, now, event, [dueHere(at, now)], { outcome: 'not_given' })
  return [
    transition(at.step.name, ifAgain(true), breaks),
    ...along(at.ways, ifAgain(false), both(breaks, both(noMore, leaving))),
  ]
}

/** The key that voids a trial ends it too. */
export const endedByKey: Change = (state, { body }) => {
  const stamp = 'stamp' in body ? (body.stamp as Stamp | null) : null
  if (stamp === null || state.visit === null) return {}
  const end = { at: stamp.at, clock: stamp.clock }
  const { step, place } = state.visit
  return { dead: end, ends: grow(state.ends, { ...end, step, place }) }
}

const dueHere = (at: StepGround, state: State) => ({ step: at.step, place: state.place, outcome: null })

/** The trial at hand ends with this outcome, whether it had begun or not; null keeps the one it has. */
export function closeAs(
  at: StepGround,
  outcomeOf: (state: State, event: Happened) => Outcome | null,
): Change {
  return (state, event) => {
    const outcome = outcomeOf(state, event)
    if (state.flight !== null) return stand(at, state, outcome, reasonIn(event))
    return addRows(at, state, event, [dueHere(at, state)], { outcome: outcome ?? 'not_given' })
  }
}

/** The outcome with which something is closed. */
export const closingOf = (_state: State, { body }: Happened): Outcome =>
  'outcome' in body ? (body.outcome as Outcome) : 'not_given'

/** The trial is closed as tried, unable, refused, not allowed, absent or not given. */
export function closeStep(at: StepGround, closes: Change = closeAs(at, closingOf)): Transition[] {
  const measures = Object.keys(at.kind.columns(at.step)).length > 0
  return along(
    at.ways,
    {
      when: (_state, { body }) => 'what' in body && (body.what === 'trial' || body.what === at.step.name),
      refuses: (state, event) =>
        misplaced(state, event) ?? (measures ? null : refuse('no_trial', { step: at.step.name })),
    },
    both(closes, leaving),
  )
}

/** The script is left: that takes a reason and is a deviation. */
export function skipStep(at: StepGround): Transition[] {
  const deviates: Change = (state, event) => ({
    deviations: grow(state.deviations, {
      code: 'skipped',
      what: at.step.name,
      reason: 'reason' in event.body ? String(event.body.reason) : '',
      norms: 'caution',
      at: event.at,
      by: event.user,
    }),
  })
  return along(
    at.ways,
    { refuses: misplaced },
    both(
      deviates,
      both(
        closeAs(at, () => 'skipped'),
        leaving,
      ),
    ),
  )
}
