import { profile } from '../../../protocols/client.ts'
import { eventKind } from '../event-kind.ts'

/** A new client, with all that is known then. */
export const event = eventKind({ stream: 'client', kind: 'client-added', version: 1, says: { profile } })
