import { Refused } from '../../contract/procedure.ts'
import { checkInSight } from '../clinic.ts'
import type { Group } from '../group.ts'
import { historyOf } from '../history-of.ts'

export const historyCalls: Group<'history.read'> = (clinic) => ({
  'history.read'({ client, protocol }) {
    checkInSight(clinic, client)
    const { records } = clinic.stores
    if (!records.read.client(client)) throw new Refused('no_such_client')
    return historyOf(records, client, protocol)
  },
})
