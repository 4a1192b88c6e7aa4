import { Refused } from '../../contract/procedure.ts'
import { type Stream, visitClosed, visitOpened } from '../../records/index.ts'
import type { Group } from '../group.ts'
import { visitOf } from '../visit.ts'

const streamOf = (client: string): Stream => ({ kind: 'client', id: client })

export const visitCalls: Group<'visits.open' | 'visits.close'> = (clinic) => {
  const { records } = clinic.stores
  return {
    'visits.open'({ client }, { user }) {
      const now = clinic.openVisit()
      if (now?.client === client) return visitOf(clinic, now)
      if (now) throw new Refused('visit_open')
      if (!records.read.client(client)) throw new Refused('no_such_client')
      const visit = records.newId()
      records.append(streamOf(client), [visitOpened.make({ visit })], user.id)
      clinic.push({ push: 'clinic' })
      const opened = records.read.visit(visit)
      if (!opened) throw new Error('A visit that was opened is not there.')
      return visitOf(clinic, opened)
    },
    'visits.close'({ visit }, { user }) {
      const found = records.read.visit(visit)
      if (!found) throw new Refused('no_such_visit')
      if (found.closedAt) throw new Refused('visit_closed')
      records.append(streamOf(found.client), [visitClosed.make({ visit })], user.id)
      clinic.push({ push: 'clinic' })
      void clinic.upkeep.backUp()
      return {}
    },
  }
}
