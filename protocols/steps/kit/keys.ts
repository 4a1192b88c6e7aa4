import { z } from 'zod'
import { name } from '../../language/schema/shapes.ts'

/** `of` names the pieces of the protocol's kit that have to be in place here. */
export const keys = z.strictObject({ of: z.array(name).min(1).max(50) })

/** A kit step's fields as the runner meets them. */
export interface KitFields {
  readonly of: readonly string[]
}
