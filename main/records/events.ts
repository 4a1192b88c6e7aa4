/**
 * The kinds of event that client and clinic streams hold, found by listing `events/`. What an administration
 * holds is the domain's own (`protocols/runner/events.ts`). A kind once used never changes its shape: a new
 * shape is a new file with the next version, and the old one stays so that old events can be read.
 */
import { z } from 'zod'
import { eventBody } from '../../protocols/runner/events.ts'
import type { StreamKind } from './chain.ts'
import type { Body, EventKind } from './event-kind.ts'

/** The version that events of administrations are written in. */
const ADMINISTRATION_VERSION = 1

const files = import.meta.glob<{ event: EventKind }>('./events/*.ts', { eager: true })

/** Every kind in every version, by the name of its file. */
export const EVENT_KINDS: ReadonlyMap<string, EventKind> = new Map(
  Object.entries(files).map(([path, file]) => [path.replace(/^.*\/|\.ts$/g, ''), file.event]),
)

const newest = new Map<string, EventKind>()
for (const kind of EVENT_KINDS.values()) {
  const known = newest.get(kind.kind)
  if (!known || known.version < kind.version) newest.set(kind.kind, kind)
}

export const eventFileName = (kind: string, version: number): string => `${kind}.v${version}`

/**
 * Checks a body before it is written and says which version it is written in.
 * @throws TypeError where the body is not one of its stream's: a defect of the caller, nothing is written
 */
export function checkedVersion(stream: StreamKind, body: Body): number {
  if (stream === 'administration') {
    const read = eventBody.safeParse(body)
    if (read.success) return ADMINISTRATION_VERSION
    throw new TypeError(`Not an event of an administration (${body.kind}): ${z.prettifyError(read.error)}`)
  }
  const kind = newest.get(body.kind)
  if (!kind || kind.stream !== stream) throw new TypeError(`A ${stream} stream has no event '${body.kind}'.`)
  const read = kind.body.safeParse(body)
  if (!read.success) throw new TypeError(`Not a '${body.kind}': ${z.prettifyError(read.error)}`)
  return kind.version
}

/**
 * How an event that was kept reads today: `known`, `unknown` (a newer program wrote it: it is kept and shown to
 * nobody), or `unreadable` (its kind is known and it isn't one).
 */
export function standingOf(
  stream: StreamKind,
  version: number,
  body: Body,
): 'known' | 'unknown' | 'unreadable' {
  if (stream === 'administration') {
    if (version !== ADMINISTRATION_VERSION) return 'unknown'
    return eventBody.safeParse(body).success ? 'known' : 'unreadable'
  }
  const kind = EVENT_KINDS.get(eventFileName(body.kind, version))
  if (!kind) return 'unknown'
  return kind.stream === stream && kind.body.safeParse(body).success ? 'known' : 'unreadable'
}
