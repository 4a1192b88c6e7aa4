import { canonicalText } from '../canonical.ts'
import { event as kitRegistered } from '../events/kit-registered.v1.ts'
import { type Projection, when } from '../projection-kind.ts'

export const projection: Projection = {
  tables: ['kit'],
  on: [
    when(kitRegistered, (_, body) => [
      {
        put: 'kit',
        row: { id: body.piece.id, protocol: body.protocol, piece: canonicalText(body.piece) },
      },
    ]),
  ],
}
