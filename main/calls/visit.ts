import type { z } from 'zod'
import type { visit } from '../contract/shapes.ts'
import type { VisitRow } from '../records/index.ts'
import type { Clinic } from './clinic.ts'
import { administrationLineOf } from './lines.ts'

/** A visit with what has been given in it, newest first. */
export const visitOf = ({ stores }: Pick<Clinic, 'stores'>, row: VisitRow): z.infer<typeof visit> => ({
  id: row.id,
  client: row.client,
  openedAt: row.openedAt,
  administrations: stores.records.read
    .administrationsOfVisit(row.id)
    // One that was moved away is another client's now.
    .filter((one) => one.client === row.client)
    .map(administrationLineOf),
})
