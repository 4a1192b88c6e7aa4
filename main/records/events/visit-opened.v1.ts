import { z } from 'zod'
import { eventKind } from '../event-kind.ts'

/** The client is here: the administrations from now on are one visit's. */
export const event = eventKind({
  stream: 'client',
  kind: 'visit-opened',
  version: 1,
  says: { visit: z.uuid() },
})
