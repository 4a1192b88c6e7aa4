import { z } from 'zod'
import { bounds, unit } from '../../language/schema/shapes.ts'

/** `range` holds the plausible values: one outside it is asked for again. */
export const keys = z.strictObject({
  unit,
  range: bounds,
  decimals: z.int().min(0).max(6).optional(),
})

/** A measured step's fields as the runner meets them. */
export interface MeasuredFields {
  readonly unit: string
  readonly range: readonly [number, number]
  readonly decimals?: number
}
