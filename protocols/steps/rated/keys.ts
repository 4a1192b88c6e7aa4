import { z } from 'zod'
import type { Expression } from '../../language/expressions/types.ts'
import type { Text } from '../../language/model.ts'
import { expression, from, text, whole } from '../../language/schema/shapes.ts'

const SCALE_PHRASE = 'two or more whole grades with their words, such as { 0: None, 1: Part, 2: Full }'
const GRADE = /^(?:0|[1-9]\d?)$/
const ALLOW_PHRASE = 'a list of grades such as [0, 2], or { from: expression }'

/** `scale` gives each grade its words; `allow` leaves some of them out here, `highest` says how far up one may go. */
export const keys = z.strictObject({
  scale: z
    .record(z.string(), text, { error: SCALE_PHRASE })
    .refine(
      (scale) => Object.keys(scale).length >= 2 && Object.keys(scale).every((grade) => GRADE.test(grade)),
      { error: SCALE_PHRASE },
    )
    // For the JSON Schema, which can't say it otherwise.
    .meta({ minProperties: 2, propertyNames: { pattern: GRADE.source } }),
  highest: expression.optional(),
  allow: z.union([z.array(whole).min(1), from], { error: ALLOW_PHRASE }).optional(),
})

/** A rated step's fields as the runner meets them. */
export interface RatedFields {
  readonly scale: Readonly<Record<string, Text>>
  readonly highest?: Expression
  readonly allow?: readonly number[] | { readonly from: Expression }
}
