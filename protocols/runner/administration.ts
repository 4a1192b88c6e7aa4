/** An administration as the chart has it, with the way back that undo takes. */
import { type AnyStateMachine, initialTransition, transition } from 'xstate'
import { STEP_KINDS } from '../language/schema/kinds.ts'
import type { Recorded } from './events.ts'
import { refusalOf } from './refusals.ts'
import type { Happened, Snapshot } from './state.ts'
import { dataOf } from './step-ground.ts'
import type { Refusal } from './view.ts'
import { secondsBetween } from './wall-time.ts'
import { refuse } from './refuse.ts'

/** An event that was taken. Where the chart stood before it is kept for one in so many, the rest is stepped again. */
interface Past {
  readonly recorded: Recorded
  readonly count: number
  readonly before: Snapshot | null
  readonly earlier: Past | null
}

/** So many events are stepped again at most to undo one: far below what anybody notices. */
const KEPT_EVERY = 32

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
  signalled: 'kept',
  noted: 'kept',
  finished: 'final',
  rating_ended: 'final',
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

export const begin = ({ machine }: Pick<Chart, 'machine'>): Administration => ({
  snapshot: initialTransition(machine)[0] as Snapshot,
  past: null,
})

/** The chart of a protocol and how long a gap makes going on a decision. */
export interface Chart {
  readonly machine: AnyStateMachine
  readonly longestGapSeconds: number
}

/** Takes an event, or says why not; then nothing has changed. */
export function take(
  chart: Chart,
  administration: Administration,
  recorded: Recorded,
): Administration | Refusal {
  if (recorded.body.kind === 'undone') return undo(chart, administration)
  const malformed = malformedData(recorded)
  if (malformed !== null) return malformed
  const { snapshot, past } = administration
  if (past?.recorded.id === recorded.id) return refuse('taken_already')
  const happened = happenedBy(chart, past, recorded)
  const next = step(chart, snapshot, happened)
  if (next.context.last !== recorded.id) return refusalOf(snapshot, happened)
  const count = past === null ? 0 : past.count + 1
  const before = count % KEPT_EVERY === 0 ? snapshot : null
  return { snapshot: next, past: { recorded, count, before, earlier: past } }
}

const step = ({ machine }: Chart, snapshot: Snapshot, happened: Happened): Snapshot =>
  transition(machine, snapshot as never, happened)[0] as Snapshot

function happenedBy({ longestGapSeconds }: Chart, past: Past | null, recorded: Recorded): Happened {
  const { id, at, user, body } = recorded
  const late = past !== null && secondsBetween(past.recorded.at, at) > longestGapSeconds
  return { type: body.kind, id, at, user, late, body }
}

/** Where the chart stood before an event that it has taken. */
function standingBefore(chart: Chart, past: Past): Snapshot {
  const since: Past[] = []
  let from = past
  while (from.before === null && from.earlier !== null) {
    from = from.earlier
    since.unshift(from)
  }
  let snapshot = from.before ?? begin(chart).snapshot
  for (const { recorded, earlier } of since) {
    snapshot = step(chart, snapshot, happenedBy(chart, earlier, recorded))
  }
  return snapshot
}

/** The kind's own schema has to let an event of a step through. */
function malformedData({ body }: Recorded): Refusal | null {
  const [kind, event] = body.kind.split('.') as [string, string | undefined]
  if (event === undefined) return null
  const schema = STEP_KINDS.get(kind)?.events[event]
  if (schema === undefined) return refuse('unknown_event', { event: body.kind })
  const read = schema.safeParse(dataOf(body))
  if (read.success) return null
  const [issue] = read.error.issues
  return refuse('malformed', { event: body.kind, path: issue?.path.join('.') ?? '' })
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
function undo(chart: Chart, administration: Administration): Administration | Refusal {
  if (!canUndo(administration)) return refuse('nothing_to_undo')
  const kept: Recorded[] = []
  let past = administration.past
  while (past !== null && standingOf(past.recorded) !== 'act') {
    if (standingOf(past.recorded) === 'kept') kept.unshift(past.recorded)
    past = past.earlier
  }
  if (past === null) return administration
  let standing: Administration = { snapshot: standingBefore(chart, past), past: past.earlier }
  for (const recorded of kept) {
    const next = take(chart, standing, recorded)
    if (!('refused' in next)) standing = next
  }
  return standing
}
