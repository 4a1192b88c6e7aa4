import { z } from 'zod'
import { eventKind } from '../event-kind.ts'

/** Somebody who gives tests here: a name with an id of its own. */
export const event = eventKind({
  stream: 'clinic',
  kind: 'user-added',
  version: 1,
  says: { user: z.uuid(), name: z.string().trim().min(1).max(200) },
})
