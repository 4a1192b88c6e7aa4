import { z } from 'zod'
import { bounds, quantityOrFrom } from '../../language/schema/shapes.ts'
import type { From, Quantity } from '../../language/model.ts'
import { type Cue } from '../kind.ts'
import { cue } from '../cue.ts'

/** `range` holds the plausible times in seconds: a time typed outside it is asked for again. */
export const keys = z.strictObject({
  start: cue,
  stop: cue,
  limit: quantityOrFrom.optional(),
  range: bounds.optional(),
})

/** A timed step's fields as the runner meets them. */
export interface TimedFields {
  readonly start: Cue
  readonly stop: Cue
  readonly limit?: From<Quantity>
  readonly range?: readonly [number, number]
}
