import { z } from 'zod'

export const keys = z.strictObject({})
