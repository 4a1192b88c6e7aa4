/** Why the chart doesn't take an event: the law of the transition that was meant, or that there is none. */
import { type AnyMachineSnapshot, getNextTransitions } from 'xstate'
import type { Happened, Snapshot } from './state.ts'
import { misplaced } from './step-ground.ts'
import type { Law } from './transitions.ts'
import type { Refusal } from './view.ts'
import { refuse } from './refuse.ts'

export interface Possible {
  readonly event: string
  readonly law: Law
}

/** Every transition that leads on from where the chart stands, with its law; innermost states first. */
export function possible(snapshot: Snapshot): Possible[] {
  return getNextTransitions(snapshot as AnyMachineSnapshot).flatMap(({ eventType, meta }) =>
    eventType === '' || eventType.startsWith('=') ? [] : [{ event: eventType, law: (meta ?? {}) as Law }],
  )
}

/** The phase at the top of the chart. */
export const phaseOf = ({ value }: Snapshot): string =>
  typeof value === 'string' ? value : (Object.keys(value)[0] ?? '')

/** The state that the step at hand is in, such as `running`. */
export function innermost({ value }: Snapshot): string {
  let state: unknown = value
  while (typeof state === 'object' && state !== null) state = Object.values(state)[0]
  return String(state)
}

export function refusalOf(snapshot: Snapshot, event: Happened): Refusal {
  const { context } = snapshot
  const lawful = possible(snapshot).filter((each) => each.event === event.type)
  for (const { law } of lawful) {
    if (law.when?.(context, event) === false) continue
    const refusal = law.refuses?.(context, event) ?? null
    if (refusal !== null) return refusal
  }
  const phase = phaseOf(snapshot)
  if (phase !== 'giving') return refuse('not_in_phase', { event: event.type, phase })
  const elsewhere = 'step' in event.body ? misplaced(context, event) : null
  return elsewhere ?? refuse('not_now', { event: event.type, state: innermost(snapshot) })
}
