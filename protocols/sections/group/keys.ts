import { z } from 'zod'

/** Nothing but steps under a name: what a rule can end together. */
export const keys = z.strictObject({})
