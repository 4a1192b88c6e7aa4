import { Refused } from '../contract/procedure.ts'
import type { AdministrationRow } from '../records/index.ts'
import { checkInSight, type Clinic } from './clinic.ts'
import type { Store } from './keeping.ts'

/**
 * The administration as the lists know it, if whoever is at the desk may see it.
 * @throws Refused `no_such_administration`, `wrong_client`
 */
export function inSight(clinic: Clinic, store: Store, id: string): AdministrationRow {
  const row = clinic.stores[store].read.administration(id)
  if (!row) throw new Refused('no_such_administration')
  checkInSight(clinic, row.client)
  return row
}
