import { z } from 'zod'
import { eventKind } from '../event-kind.ts'

/** The visit is over. */
export const event = eventKind({
  stream: 'client',
  kind: 'visit-closed',
  version: 1,
  says: { visit: z.uuid() },
})
