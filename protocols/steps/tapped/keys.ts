import { z } from 'zod'
import type { From, Quantity } from '../../language/model.ts'
import { quantityOrFrom } from '../../language/schema/shapes.ts'
import { type Cue } from '../kind.ts'
import { cue } from '../cue.ts'

/**
 * The window opens by the cue `start`; without one by the first press, which then counts. `{ from }` gives `go` or
 * `first_press`. A press within `bounce` of the one before it is none.
 */
export const keys = z.strictObject({
  window: quantityOrFrom,
  start: cue.optional(),
  bounce: quantityOrFrom.optional(),
  'half-time': z.boolean().optional(),
})

/** A tapped step's fields as the runner meets them. */
export interface TappedFields {
  readonly window: From<Quantity>
  readonly start?: Cue
  readonly bounce?: From<Quantity>
  readonly 'half-time'?: boolean
}
