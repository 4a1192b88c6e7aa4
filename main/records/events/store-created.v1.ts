import { z } from 'zod'
import { eventKind } from '../event-kind.ts'
import { STORES } from '../stores.ts'

/** The first event of every file: which of the three stores it is, so that none is taken for another. */
export const event = eventKind({
  stream: 'clinic',
  kind: 'store-created',
  version: 1,
  says: { store: z.enum(STORES) },
})
