import { z } from 'zod'
import { eventKind } from '../event-kind.ts'

/**
 * The device that made this event vouches for its chain up to the event before: `head` is that one's hash (hex),
 * `signature` (base64) the Ed25519 signature of `sealBytes`. Made when an administration ends, and again after
 * each later entry to it.
 */
export const event = eventKind({
  stream: 'clinic',
  kind: 'administration-sealed',
  version: 1,
  says: {
    administration: z.uuid(),
    sequence: z.int().min(1),
    head: z.string().regex(/^[0-9a-f]{64}$/),
    signature: z.base64(),
  },
})
