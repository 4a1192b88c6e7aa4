import type { Birth } from '../../protocols/client.ts'
import type { Protocol } from '../../protocols/language/model.ts'
import type { AdministrationView } from '../../protocols/runner/view.ts'
import type { Result } from '../../protocols/scoring/result.ts'
import type { Output } from '../contract/procedures.ts'

/** Who the test was given to, as the clinic knows them. */
export interface Person {
  readonly name: string
  readonly number: string
  readonly secondIdentifier: string
  readonly born: Birth
}

/** The earlier values of one score, as the history screen has them. */
export type Series = Output<'history.read'>[number]

/** All that a report is made of. The same input gives the same bytes. */
export interface ReportInput {
  readonly result: Result
  /** The protocol it was given by: for the words of its own names. */
  readonly protocol: Protocol
  readonly view: Pick<
    AdministrationView,
    'phase' | 'prepared' | 'precautions' | 'stops' | 'pauses' | 'remarks' | 'firstHand' | 'raters' | 'rules'
  >
  /** Null in a rehearsal. */
  readonly person: Person | null
  /** The clinic's name; empty where it has none. */
  readonly clinic: string
  /** True for the demo clinic: marked on every page. */
  readonly demo: boolean
  readonly history: readonly Series[]
  /** How the records were sealed when it ended; null while it hasn't. */
  readonly seal: Output<'administrations.result'>['seal']
  /** The moment it is made, RFC 3339 with offset. */
  readonly now: string
}
