import { z } from 'zod'
import { eventKind } from '../event-kind.ts'

/**
 * The files of a protocol as they were when it was first given here, so that an administration can be read and
 * scored for ever by what it was given by. `hash` is `protocolHash` of the files.
 */
export const event = eventKind({
  stream: 'clinic',
  kind: 'protocol-kept',
  version: 1,
  says: {
    hash: z.string().regex(/^[0-9a-f]{64}$/),
    files: z.record(z.string().min(1), z.string()),
  },
})
