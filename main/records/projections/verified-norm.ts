import { event as normVerified } from '../events/norm-verified.v1.ts'
import { type Projection, when } from '../projection-kind.ts'

export const projection: Projection = {
  tables: ['verified_norm'],
  on: [
    when(normVerified, (entry, body) => {
      const key = { protocol: body.protocol, norm: body.norm, table_hash: body.table }
      return body.verified
        ? [{ put: 'verified_norm', row: { ...key, user: entry.user, at: entry.at } }]
        : [{ drop: 'verified_norm', where: key }]
    }),
  ],
}
