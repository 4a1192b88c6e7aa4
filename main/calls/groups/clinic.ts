import { PROGRAM } from '../../program.ts'
import type { Group } from '../group.ts'
import { administrationLineOf } from '../lines.ts'
import { visitOf } from '../visit.ts'

export const clinicCalls: Group<'clinic.state' | 'desk.waiting'> = (clinic) => {
  const { records } = clinic.stores
  return {
    'clinic.state'(_, { session }) {
      const visit = clinic.openVisit()
      return {
        program: { name: PROGRAM.name, version: PROGRAM.version },
        demo: clinic.demo,
        recordsFolder: clinic.folder,
        clinicProtocolsFolder: clinic.ownProtocols,
        users: records.read.users(),
        user: session.user,
        // Whose visit it is shows to nobody before somebody is at the desk.
        visit: visit && session.user ? visitOf(clinic, visit) : null,
        today: clinic.today(),
        notice: ['not_for_real_clients', ...(clinic.demo ? ['demo'] : []), ...clinic.upkeep.notices()],
      }
    },
    'desk.waiting'(_, { user }) {
      const visit = clinic.openVisit()
      return records.read
        .waitingFor(user.id)
        .filter((row) => !visit || row.client === visit.client)
        .map(administrationLineOf)
    },
  }
}
