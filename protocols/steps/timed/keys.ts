import { z } from 'zod'
import { bounds, name, quantityOrFrom, text, wholeOrFrom } from '../../language/schema/shapes.ts'
import type { From, Quantity, Text } from '../../language/model.ts'
import { type Cue } from '../kind.ts'
import { cue } from '../cue.ts'

/**
 * `range` holds the plausible times in seconds: a time typed outside it is asked for again. `reached` asks at the limit
 * how far it went, each a column; `splits` are moments that are stamped on the way, each a column.
 */
export const keys = z.strictObject({
  start: cue,
  stop: cue,
  limit: quantityOrFrom.optional(),
  range: bounds.optional(),
  'half-time': z.boolean().optional(),
  reached: z.record(name, z.strictObject({ of: wholeOrFrom, text: text.optional() })).optional(),
  splits: z.record(name, text).optional(),
})

/** A timed step's fields as the runner meets them. */
export interface TimedFields {
  readonly start: Cue
  readonly stop: Cue
  readonly limit?: From<Quantity>
  readonly range?: readonly [number, number]
  readonly 'half-time'?: boolean
  readonly reached?: Readonly<Record<string, Reached>>
  readonly splits?: Readonly<Record<string, Text>>
}

/** How many there are of what is counted at the limit. */
interface Reached {
  readonly of: From<number>
  readonly text?: Text
}
