import { z } from 'zod'
import { profile } from '../../../protocols/client.ts'
import { eventKind } from '../event-kind.ts'

/** The client's profile from now on, whole, and why it was changed. */
export const event = eventKind({
  stream: 'client',
  kind: 'client-changed',
  version: 1,
  says: { profile, reason: z.string().max(500) },
})
