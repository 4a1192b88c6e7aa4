/** Every call's handler, by groups: one file a group. A call without one does not compile. */
import type { Handlers } from '../contract/dispatch.ts'
import type { Clinic } from './clinic.ts'
import { administrationCalls } from './groups/administrations.ts'
import { clientCalls } from './groups/clients.ts'
import { clinicCalls } from './groups/clinic.ts'
import { historyCalls } from './groups/history.ts'
import { kitCalls } from './groups/kit.ts'
import { protocolCalls } from './groups/protocols.ts'
import { resultCalls } from './groups/results.ts'
import { userCalls } from './groups/users.ts'
import { visitCalls } from './groups/visits.ts'

export const handlersOf = (clinic: Clinic): Omit<Handlers, 'calls.stop'> => ({
  ...clinicCalls(clinic),
  ...userCalls(clinic),
  ...clientCalls(clinic),
  ...visitCalls(clinic),
  ...protocolCalls(clinic),
  ...kitCalls(clinic),
  ...administrationCalls(clinic),
  ...resultCalls(clinic),
  ...historyCalls(clinic),
})
