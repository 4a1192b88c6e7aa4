import type { Database } from './database.ts'
import { readAdministrations } from './reads-administrations.ts'
import { readClients } from './reads-clients.ts'
import { readClinic } from './reads-clinic.ts'
import type { Reads } from './rows.ts'

/** Questions to the read models of one open database; statements are prepared once. */
export const readsOf = (database: Database): Reads => ({
  ...readClinic(database),
  ...readClients(database),
  ...readAdministrations(database),
})
