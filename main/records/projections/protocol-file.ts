import { event as protocolKept } from '../events/protocol-kept.v1.ts'
import { type Projection, when } from '../projection-kind.ts'

export const projection: Projection = {
  tables: ['protocol_file'],
  on: [
    when(protocolKept, (_, body) =>
      Object.entries(body.files).map(([path, text]) => ({
        put: 'protocol_file',
        row: { hash: body.hash, path, text },
      })),
    ),
  ],
}
