import { event as userAdded } from '../events/user-added.v1.ts'
import { type Projection, when } from '../projection-kind.ts'

export const projection: Projection = {
  tables: ['user'],
  on: [
    when(userAdded, (entry, body) => [
      { put: 'user', row: { id: body.user, name: body.name, since: entry.at } },
    ]),
  ],
}
