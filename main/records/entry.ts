import type { Envelope, StreamKind } from './chain.ts'
import type { Body } from './event-kind.ts'

export interface Stream {
  readonly kind: StreamKind
  readonly id: string
}

/** An event as the log holds it. `body` is null where it was erased. */
export interface Entry extends Envelope {
  readonly body: Body | null
}

/** An event that has its id and its time and is not written yet: what is held in memory while a disk refuses. */
export interface Stamped {
  readonly id: string
  readonly at: string
  readonly user: string
  readonly stream: Stream
  readonly version: number
  readonly body: Body
}
