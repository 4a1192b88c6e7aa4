import { z } from 'zod'
import { kitPiece } from '../../../protocols/runner/events.ts'
import { eventKind } from '../event-kind.ts'

/** A piece of the clinic's kit for one protocol. The same id again gives its present state, such as a new check. */
export const event = eventKind({
  stream: 'clinic',
  kind: 'kit-registered',
  version: 1,
  says: { protocol: z.string().min(1), piece: kitPiece },
})
