import { event as storeCreated } from '../events/store-created.v1.ts'
import { type Projection, when } from '../projection-kind.ts'

export const projection: Projection = {
  tables: ['store'],
  on: [when(storeCreated, (_, body) => [{ put: 'store', row: { kind: body.store } }])],
}
