/** What the host tells every open screen without being asked. */
import { z } from 'zod'

export const push = z.discriminatedUnion('push', [
  /** Something written: screens that show it read it again. `saved` false: held in memory, the disk refuses. */
  z.strictObject({
    push: z.literal('administration'),
    store: z.enum(['records', 'rehearsal']),
    id: z.uuid(),
    saved: z.boolean(),
  }),
  z.strictObject({ push: z.literal('protocols') }),
  z.strictObject({ push: z.literal('clinic') }),
  z.strictObject({
    push: z.literal('progress'),
    call: z.uuid(),
    done: z.number().min(0).max(1),
    doing: z.string(),
  }),
])
export type Push = z.infer<typeof push>
