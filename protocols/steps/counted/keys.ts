import { z } from 'zod'
import { quantityOrFrom, unit, whole } from '../../language/schema/shapes.ts'
import type { From, Quantity } from '../../language/model.ts'
import { type Cue } from '../kind.ts'
import { cue } from '../cue.ts'

/** `range` holds the plausible counts: one outside it is asked for again. */
export const keys = z.strictObject({
  window: quantityOrFrom,
  start: cue,
  unit: unit.optional(),
  'half-time': z.boolean().optional(),
  range: z.tuple([whole, whole]),
})

/** A counted step's fields as the runner meets them. */
export interface CountedFields {
  readonly window: From<Quantity>
  readonly start: Cue
  readonly unit?: string
  readonly 'half-time'?: boolean
  readonly range: readonly [number, number]
}
