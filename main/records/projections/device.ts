import { event as deviceAdded } from '../events/device-added.v1.ts'
import { type Projection, when } from '../projection-kind.ts'

export const projection: Projection = {
  tables: ['device'],
  on: [
    when(deviceAdded, (entry, body) => [
      { put: 'device', row: { id: body.device, public_key: body.publicKey, since: entry.at } },
    ]),
  ],
}
