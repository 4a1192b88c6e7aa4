import { z } from 'zod'
import { eventKind } from '../event-kind.ts'

/** A machine that writes here, with the public half of its Ed25519 key (SPKI DER, base64). */
export const event = eventKind({
  stream: 'clinic',
  kind: 'device-added',
  version: 1,
  says: { device: z.uuid(), publicKey: z.base64() },
})
