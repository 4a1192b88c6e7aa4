import { z } from 'zod'
import { eventKind } from '../event-kind.ts'

/**
 * These records were carried over from a damaged file. `lost` are the events that could not be, by their device and
 * sequence numbers; of those in `altered` what they said was not what had been hashed, and was left out.
 */
export const event = eventKind({
  stream: 'clinic',
  kind: 'records-salvaged',
  version: 1,
  says: {
    kept: z.int().min(0),
    altered: z.array(z.string()),
    lost: z.array(z.strictObject({ device: z.string(), from: z.int(), to: z.int() })),
  },
})
