import { event as administrationSealed } from '../events/administration-sealed.v1.ts'
import { type Projection, when } from '../projection-kind.ts'
import { sealCode } from '../seal.ts'

export const projection: Projection = {
  tables: ['seal'],
  on: [
    when(administrationSealed, ({ device, clock, at }, { administration, sequence, head }) => [
      { put: 'seal', row: { device, sequence, administration, code: sealCode(head), clock, at } },
    ]),
  ],
}
