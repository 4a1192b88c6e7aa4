import { z } from 'zod'
import { name, quantityOrFrom } from '../../language/schema/shapes.ts'
import type { From, Quantity } from '../../language/model.ts'

/** `since` names a trial: the rest counts from the end of its last one in this place. */
export const keys = z.strictObject({ least: quantityOrFrom, since: name.optional() })

/** A rest's fields as the runner meets them. */
export interface RestFields {
  readonly least: From<Quantity>
  readonly since?: string
}
