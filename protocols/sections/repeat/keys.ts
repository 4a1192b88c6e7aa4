import { z } from 'zod'
import type { Expression } from '../../language/expressions/types.ts'
import type { From } from '../../language/model.ts'
import { expression, wholeOrFrom } from '../../language/schema/shapes.ts'

/** `times` is a number of passes, or the fewest and the most of them; `until` ends them once the fewest are done. */
export const keys = z.strictObject({
  times: z.union([wholeOrFrom, z.strictObject({ least: wholeOrFrom, most: wholeOrFrom })], {
    error: 'a whole number, { from: expression } or { least, most }',
  }),
  until: expression.optional(),
  sheet: z.boolean().optional(),
})

/** A repeat section's fields as the runner meets them. */
export interface RepeatFields {
  readonly times: From<number> | { readonly least: From<number>; readonly most: From<number> }
  readonly until?: Expression
}
