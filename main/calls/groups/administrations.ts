import { type ClientFacts, NOTHING_KNOWN } from '../../../protocols/client.ts'
import type { EventBody } from '../../../protocols/runner/events.ts'
import type { User } from '../../contract/dispatch.ts'
import { Refused } from '../../contract/procedure.ts'
import type { Input } from '../../contract/procedures.ts'
import { PROGRAM_STAMP } from '../../program.ts'
import { CLINIC, protocolKept } from '../../records/index.ts'
import { checkedBody } from '../body-check.ts'
import { checkInSight, type Clinic } from '../clinic.ts'
import type { Group } from '../group.ts'
import { keptProtocol } from '../kept.ts'
import { inSight } from '../in-sight.ts'
import type { Saved } from '../live.ts'
import { proposalFor } from '../proposal.ts'
import { signed } from '../signed.ts'
import type { Shelved } from '../shelf.ts'

type Calls =
  | 'administrations.proposal'
  | 'administrations.open'
  | 'administrations.view'
  | 'administrations.act'
  | 'administrations.move'

export const administrationCalls: Group<Calls> = (clinic) => {
  const { stores, shelf, live } = clinic
  return {
    'administrations.proposal'({ protocol, client }) {
      checkInSight(clinic, client)
      return proposalFor(clinic, shelf.sound(protocol).protocol, client)
    },
    'administrations.open'(input, { user }) {
      const shelved = shelf.sound(input.protocol)
      if (input.wording !== null && !shelved.protocol.words.some(({ file }) => file === input.wording))
        throw new Refused('no_such_wording', { wording: input.wording })
      const facts = factsFor(clinic, input)
      keep(clinic, input.store, shelved, user)
      const id = live.begin(
        input.store,
        keptProtocol(shelved.files),
        firstEvents(clinic, input, shelved, facts, user),
        user.id,
      )
      // What the open visit holds has changed, and every screen shows that visit.
      if (input.store === 'records') clinic.push({ push: 'clinic' })
      return named(clinic, live.open(input.store, id, user.id)).view
    },
    'administrations.view'({ store, id }, { user }) {
      inSight(clinic, store, id)
      return named(clinic, live.open(store, id, user.id))
    },
    'administrations.act'({ store, id, body }, { user }) {
      inSight(clinic, store, id)
      return named(clinic, live.act(store, id, checkedBody(clinic, body), user.id))
    },
    'administrations.move'({ id, client, reason }, { user }) {
      const { client: from } = inSight(clinic, 'records', id)
      checkInSight(clinic, client)
      if (client === from) throw new Refused('same_client')
      const found = stores.records.read.client(client)
      if (!found) throw new Refused('no_such_client')
      const moved = live.assign(id, { client, facts: found.profile.facts, reason }, user.id)
      clinic.push({ push: 'clinic' })
      return signed(clinic, moved.client, moved)
    },
  }
}

/** An answer with the names of those who did what the view tells. */
const named = <Of extends Saved>(clinic: Clinic, saved: Of): Of => ({
  ...saved,
  view: signed(clinic, saved.view.client, saved.view),
})

/** What is known of whoever it is given to: nothing in a rehearsal. */
function factsFor(clinic: Clinic, { store, client }: Input<'administrations.open'>): ClientFacts {
  if (store === 'rehearsal') {
    if (client !== null) throw new Refused('rehearsal_has_no_client')
    return NOTHING_KNOWN
  }
  if (client === null) throw new Refused('client_needed')
  checkInSight(clinic, client)
  const found = clinic.stores.records.read.client(client)
  if (!found) throw new Refused('no_such_client')
  return found.profile.facts
}

/** Keeps the protocol's text beside the events before the first of them names it. */
function keep(
  { stores }: Clinic,
  store: 'records' | 'rehearsal',
  { hash, files }: Shelved,
  user: User,
): void {
  const records = stores[store]
  if (records.read.protocolFiles(hash)) return
  records.append(CLINIC, [protocolKept.make({ hash, files: Object.fromEntries(files) })], user.id)
}

function firstEvents(
  clinic: Clinic,
  { store, client, wording }: Input<'administrations.open'>,
  { from, hash, protocol }: ReturnType<Clinic['shelf']['sound']>,
  facts: ClientFacts,
  user: User,
): readonly EventBody[] {
  const { id, version, language, words } = protocol
  const visit = store === 'records' ? clinic.openVisit() : null
  return [
    {
      kind: 'opened',
      protocol: {
        id,
        version,
        hash,
        language: words.find(({ file }) => file === wording)?.language ?? language,
        wording,
        from,
      },
      program: PROGRAM_STAMP,
      rehearsal: store === 'rehearsal',
      visit: visit?.id ?? null,
      on: clinic.today(),
      examiner: { id: user.id, name: user.name },
    },
    { kind: 'assigned', client, facts, reason: null },
  ]
}
