import { event as visitClosed } from '../events/visit-closed.v1.ts'
import { event as visitOpened } from '../events/visit-opened.v1.ts'
import { type Projection, when } from '../projection-kind.ts'

export const projection: Projection = {
  tables: ['visit'],
  on: [
    when(visitOpened, (entry, body) => [
      {
        put: 'visit',
        row: {
          id: body.visit,
          client: entry.stream.id,
          user: entry.user,
          opened_at: entry.at,
          closed_at: null,
        },
      },
    ]),
    when(visitClosed, (entry, body) => [
      { set: 'visit', to: { closed_at: entry.at }, where: { id: body.visit } },
    ]),
  ],
}
