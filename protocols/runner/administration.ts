/** An administration as the chart has it, with the way back that undo takes. */
import { type AnyStateMachine, initialTransition, transition } from 'xstate'
import { STEP_KINDS } from '../language/schema/kinds.ts'
import type { Recorded } from './events.ts'
import { refusalOf } from './refusals.ts'
import type { Happened, Snapshot } from './state.ts'
import { dataOf } from './step-ground.ts'
import type { Refusal } from './view.ts'
import { secondsBetween } from './wall-time.ts'

/** An event that was taken, with where the chart stood before it. */
interface Past {
  readonly recorded: Recorded
  readonly before: Snapshot
  readonly earlier: Past | null
}

export interface Administration {
  readonly snapshot: Snapshot
  readonly past: Past | null
}

/**
 * What undo makes of an event: `act` is taken back by it; `automatic` goes with the act before; `kept` stays
 * whatever is undone around it; `final` is where undo ends.
 */
type Standing = 'act' | 'automatic' | 'kept' | 'final'

const STANDING: Readonly<Record<string, Standing>> = {
  opened: 'kept',
  assigned: 'kept',
  prepared: 'kept',
  confirmed: 'kept',
  clock: 'kept',
  interrupted: 'kept',
  noted: 'kept',
  finished: 'final',
  withdrawn: 'final',
}

/** Events of steps that a clock outside makes, by their full name. */
const AUTOMATIC: ReadonlySet<string> = new Set(
  [...STEP_KINDS.values()].flatMap(({ kind, chart }) =>
    Object.values(chart.states).flatMap(({ on }) =>
      Object.entries(on)
        .filter(([, moves]) => moves.some(({ automatic }) => automatic))
        .map(([event]) => `${kind}.${event}`),
    ),
  ),
)

function standingOf({ body }: Recorded): Standing {
  if (body.kind === 'ordered') return 'rule' in body && body.rule === 'chosen' ? 'act' : 'automatic'
  return STANDING[body.kind] ?? (AUTOMATIC.has(body.kind) ? 'automatic' : 'act')
}

export const begin = (machine: AnyStateMachine): Administration => ({
  snapshot: initialTransition(machine)[0] as Snapshot,
  past: null,
})

/** Takes an event, or says why not; then nothing has changed. */
export function take(
  machine: AnyStateMachine,
  administration: Administration,
  recorded: Recorded,
  longestGapSeconds: number,
): Administration | Refusal {
  if (recorded.body.kind === 'undone') return undo(machine, administration, longestGapSeconds)
  const malformed = malformedData(recorded)
  if (malformed !== null) return malformed
  const { snapshot, past } = administration
  const happened: Happened = {
    type: recorded.body.kind,
    id: recorded.id,
    at: recorded.at,
    user: recorded.user,
    late: past !== null && secondsBetween(past.recorded.at, recorded.at) > longestGapSeconds,
    body: recorded.body,
  }
  const [next] = transition(machine, snapshot as never, happened)
  if ((next as Snapshot).context.last !== recorded.id) return refusalOf(snapshot, happened)
  return { snapshot: next as Snapshot, past: { recorded, before: snapshot, earlier: past } }
}

/** The kind's own schema has to let an event of a step through. */
function malformedData({ body }: Recorded): Refusal | null {
  const [kind, event] = body.kind.split('.') as [string, string | undefined]
  if (event === undefined) return null
  const schema = STEP_KINDS.get(kind)?.events[event]
  if (schema === undefined) return { refused: 'unknown_event', detail: { event: body.kind } }
  const read = schema.safeParse(dataOf(body))
  if (read.success) return null
  const [issue] = read.error.issues
  return { refused: 'malformed', detail: { event: body.kind, path: issue?.path.join('.') ?? '' } }
}

/** True when there is an act that can be taken back. */
export function canUndo({ past }: Administration): boolean {
  for (let each = past; each !== null; each = each.earlier) {
    const standing = standingOf(each.recorded)
    if (standing === 'act') return true
    if (standing === 'final') return false
  }
  return false
}

/** As if the last act still standing, and what followed from it by itself, had never been. */
function undo(
  machine: AnyStateMachine,
  administration: Administration,
  longestGapSeconds: number,
): Administration | Refusal {
  if (!canUndo(administration)) return { refused: 'nothing_to_undo', detail: {} }
  const kept: Recorded[] = []
  let past = administration.past
  while (past !== null && standingOf(past.recorded) !== 'act') {
    if (standingOf(past.recorded) === 'kept') kept.unshift(past.recorded)
    past = past.earlier
  }
  if (past === null) return administration
  let standing: Administration = { snapshot: past.before, past: past.earlier }
  for (const recorded of kept) {
    const next = take(machine, standing, recorded, longestGapSeconds)
    if (!('refused' in next)) standing = next
  }
  return standing
}
