/** What the read models answer, in the domain's own shapes. */
import type { z } from 'zod'
import type { Profile } from '../../protocols/client.ts'
import type { KitPiece } from '../../protocols/runner/events.ts'
import type { settings } from '../contract/shapes.ts'

export interface UserRow {
  readonly id: string
  readonly name: string
}
export interface ClientRow {
  readonly id: string
  readonly profile: Profile
}
export interface VisitRow {
  readonly id: string
  readonly client: string
  readonly user: string
  readonly openedAt: string
  readonly closedAt: string | null
}
export interface AdministrationRow {
  readonly id: string
  readonly protocol: string
  readonly version: string
  readonly title: string
  readonly hash: string
  readonly source: 'library' | 'clinic'
  readonly wording: string | null
  readonly rehearsal: boolean
  readonly client: string | null
  readonly clientName: string
  readonly visit: string | null
  readonly examiner: UserRow
  /** The civil date it counts for, as last put right. */
  readonly on: string
  readonly startedAt: string
  readonly finishedAt: string | null
  /** As the projector says; `unreadable` where it can't. */
  readonly phase: string
  readonly note: string | null
  /** Withdrawn, or, in a client's list, moved away from this client. */
  readonly enteredInError: boolean
  readonly deviations: number
  readonly basis: string
}
export interface ScoreRow {
  readonly administration: string
  readonly score: string
  readonly place: Readonly<Record<string, string>>
  readonly title: string
  readonly value: number | null
  readonly over: boolean
  readonly unit: string
  readonly decimals: number
  readonly better: 'higher' | 'lower' | 'none'
  readonly missing: string | null
}
export interface VerifiedNorm {
  readonly protocol: string
  readonly norm: string
  /** SHA-256 of the table's text that was compared with its source. */
  readonly table: string
  readonly by: string
  readonly at: string
}
/** The device's signature over its chain when an administration ended or was last added to. */
export interface SealRow {
  readonly administration: string
  /** What stands on the report. */
  readonly code: string
  readonly at: string
}
export interface OrderRow {
  readonly administration: string
  readonly items: readonly string[]
  /** The rule that decided it. */
  readonly rule: string
}
interface Found {
  /** False below three letters or digits: then nobody is listed. */
  readonly enough: boolean
  readonly found: readonly ClientRow[]
  readonly more: boolean
}

export interface Reads {
  users(): UserRow[]
  user(id: string): UserRow | null
  settings(user: string): z.infer<typeof settings> | null
  kit(protocol: string): KitPiece[]
  verifiedNorms(protocol: string): VerifiedNorm[]
  protocolFiles(hash: string): ReadonlyMap<string, string> | null
  client(id: string): ClientRow | null
  /** Clients whose name or number holds every word of the text, whatever the case and accents. */
  searchClients(text: string, limit: number): Found
  visit(id: string): VisitRow | null
  /** Visits that nobody has closed, oldest first. */
  openVisits(): VisitRow[]
  administration(id: string): AdministrationRow | null
  /** Newest first; also those that were moved to another client, as entered in error. */
  administrationsOf(client: string): AdministrationRow[]
  administrationsOfVisit(visit: string): AdministrationRow[]
  /** What waits for an examiner: not finished, or its note not taken. Newest first. */
  waitingFor(user: string): AdministrationRow[]
  /**
   * In which orders a section's passes came in the administrations of a protocol that were not withdrawn: the last
   * one recorded for each place.
   */
  ordersOf(protocol: string, section: string): OrderRow[]
  scoresOf(administration: string): ScoreRow[]
  /** The newest seal of an administration. */
  sealOf(administration: string): SealRow | null
  /** What was sealed with a code. */
  sealBy(code: string): SealRow | null
}
