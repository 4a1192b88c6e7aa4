import { ageOn } from '../../../protocols/age.ts'
import type { Profile } from '../../../protocols/client.ts'
import { Refused } from '../../contract/procedure.ts'
import { clientAdded, clientChanged } from '../../records/index.ts'
import { checkInSight } from '../clinic.ts'
import type { Group } from '../group.ts'
import { administrationLineOf, clientLineOf } from '../lines.ts'
import { checkProfile } from '../profile-check.ts'

/** Longer lists are no help in finding somebody. */
const MOST_FOUND = 20

export const clientCalls: Group<'clients.search' | 'clients.add' | 'clients.read' | 'clients.change'> = (
  clinic,
) => {
  const { records } = clinic.stores
  const shown = (id: string, profile: Profile) => ({
    id,
    profile,
    age: ageOn(profile.facts.birth, clinic.today()),
  })
  return {
    'clients.search'({ text }) {
      if (clinic.openVisit()) throw new Refused('visit_open')
      const { enough, found, more } = records.read.searchClients(text, MOST_FOUND)
      return { enough, more, found: found.map(clientLineOf) }
    },
    'clients.add'({ profile }, { user }) {
      if (clinic.openVisit()) throw new Refused('visit_open')
      checkProfile(profile, clinic.today())
      const id = records.newId()
      records.append({ kind: 'client', id }, [clientAdded.make({ profile })], user.id)
      return shown(id, profile)
    },
    'clients.read'({ id }) {
      checkInSight(clinic, id)
      const found = records.read.client(id)
      if (!found) throw new Refused('no_such_client')
      const administrations = records.read.administrationsOf(id)
      return {
        client: shown(id, found.profile),
        // What was moved away stays in this list as entered in error, without the other client's name.
        administrations: administrations.map((row) => {
          const line = administrationLineOf(row)
          return row.client === id ? line : { ...line, client: id, clientName: found.profile.name }
        }),
      }
    },
    'clients.change'({ id, profile, reason }, { user }) {
      checkInSight(clinic, id)
      if (!records.read.client(id)) throw new Refused('no_such_client')
      checkProfile(profile, clinic.today())
      records.append({ kind: 'client', id }, [clientChanged.make({ profile, reason })], user.id)
      return shown(id, profile)
    },
  }
}
