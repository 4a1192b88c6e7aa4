import { z } from 'zod'
import { eventKind } from '../event-kind.ts'

/**
 * The user who made the event has compared a norm table with its source, or takes that back. The mark holds for
 * the table as it was: `table` is the SHA-256 of its file's text.
 */
export const event = eventKind({
  stream: 'clinic',
  kind: 'norm-verified',
  version: 1,
  says: {
    protocol: z.string().min(1),
    norm: z.string().min(1),
    table: z.string().regex(/^[0-9a-f]{64}$/),
    verified: z.boolean(),
  },
})
