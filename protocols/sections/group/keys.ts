import { z } from 'zod'

/** Nothing but steps under a name: what a rule can end together, or what stands on one page (`sheet`). */
export const keys = z.strictObject({ sheet: z.boolean().optional() })
