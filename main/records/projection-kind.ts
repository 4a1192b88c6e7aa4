import type { Value } from './database.ts'
import type { Body, EventKind } from './event-kind.ts'
import type { Entry } from './entry.ts'

type Row = Readonly<Record<string, Value>>

export type Change =
  /** A row, whole; it replaces the one with the same primary key. */
  | { readonly put: string; readonly row: Row }
  /** Some columns of the rows that match. */
  | { readonly set: string; readonly to: Row; readonly where: Row }
  | { readonly drop: string; readonly where: Row }

interface When {
  readonly kind: string
  readonly version: number
  readonly changes: (entry: Entry, body: never) => readonly Change[]
}

export interface Projection {
  /** The tables that this projection alone writes. */
  readonly tables: readonly string[]
  readonly on: readonly When[]
}

/** What a projection does on one version of one kind of event. */
export function when<B extends Body>(
  kind: EventKind<B>,
  changes: (entry: Entry, body: B) => readonly Change[],
): When {
  return { kind: kind.kind, version: kind.version, changes }
}
