import { settings } from '../../contract/shapes.ts'
import { eventKind } from '../event-kind.ts'

/** The settings of the user who made the event, whole. */
export const event = eventKind({
  stream: 'clinic',
  kind: 'settings-changed',
  version: 1,
  says: { settings },
})
