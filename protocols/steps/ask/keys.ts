import { z } from 'zod'
import { bounds, name, text, unit, whole } from '../../language/schema/shapes.ts'
import type { Text } from '../../language/model.ts'

const OPTIONS_PHRASE = 'at least two options, such as { yes: Felt, no: Not felt }'

/**
 * Exactly one way to answer: `options` with their texts, a number (`range`, with `unit` and `decimals`), or `words`,
 * the longest answer in characters.
 */
export const keys = z.strictObject({
  options: z
    .record(name, text, { error: OPTIONS_PHRASE })
    .refine((options) => Object.keys(options).length >= 2, { error: OPTIONS_PHRASE })
    // For the JSON Schema, which can't say it otherwise.
    .meta({ minProperties: 2 })
    .optional(),
  range: bounds.optional(),
  unit: unit.optional(),
  decimals: z.int().min(0).max(6).optional(),
  words: whole.min(1).max(1000).optional(),
})

/** An asking step's fields as the runner meets them. */
export interface AskFields {
  readonly options?: Readonly<Record<string, Text>>
  readonly range?: readonly [number, number]
  readonly unit?: string
  readonly decimals?: number
  readonly words?: number
}
