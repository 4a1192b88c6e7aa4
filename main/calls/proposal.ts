/** What the start screen proposes: what stood last time, for the examiner to look at and change. */
import type { Protocol } from '../../protocols/language/model.ts'
import type { EventBody, KitPiece } from '../../protocols/runner/events.ts'
import type { Output } from '../contract/procedures.ts'
import type { Records } from '../records/index.ts'
import type { Clinic } from './clinic.ts'

type Prepared = Extract<EventBody, { kind: 'prepared' }>

const isPrepared = (body: EventBody): body is Prepared => body.kind === 'prepared'

const preparedOf = (records: Records, id: string): Prepared | null =>
  records
    .administration(id)
    .map((event) => event.body)
    .findLast(isPrepared) ?? null

export function proposalFor(
  { stores: { records }, openVisit }: Clinic,
  protocol: Protocol,
  client: string | null,
): Output<'administrations.proposal'> {
  const given =
    client === null ? [] : records.read.administrationsOf(client).filter((row) => !row.enteredInError)
  const last = given
    .filter((row) => row.protocol === protocol.id)
    .map((row) => ({ on: row.on, prepared: preparedOf(records, row.id) }))
    .find((one) => one.prepared !== null)
  const visit = openVisit()
  // What was asked once holds for the visit, and for no later one: a splint of last week is no answer today.
  const earlierToday = given
    .filter((row) => visit !== null && row.visit === visit.id)
    .map((row) => preparedOf(records, row.id))
    .find((prepared) => prepared !== null)
  return {
    conditions: last?.prepared?.conditions ?? {},
    kit: proposedKit(records.read.kit(protocol.id), protocol, last?.prepared?.kit ?? []),
    visit: earlierToday?.visit ?? null,
    lastGivenOn: last?.on ?? null,
  }
}

/** Last time's pieces as they are registered now; else a piece that is the only one of its item. */
function proposedKit(
  registered: readonly KitPiece[],
  protocol: Protocol,
  last: readonly KitPiece[],
): KitPiece[] {
  return protocol.kit.flatMap(({ id }) => {
    const candidates = registered.filter((piece) => piece.item === id)
    const again = candidates.find((piece) => last.some((one) => one.id === piece.id))
    const only = candidates.length === 1 ? candidates[0] : undefined
    const chosen = again ?? only
    return chosen ? [chosen] : []
  })
}
