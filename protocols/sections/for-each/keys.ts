import { z } from 'zod'
import type { Expression } from '../../language/expressions/types.ts'
import { expression, name } from '../../language/schema/shapes.ts'

/** Orders that any list can have; the list's own order where none is named. */
const LIST_ORDERS = ['chosen', 'shuffled', 'balanced'] as const

/** Orders of the list `hands`. Each can fail to decide for a client; then the next named one is tried. */
export const HAND_ORDERS = [
  'dominant-first',
  'nondominant-first',
  'affected-first',
  'unaffected-first',
  'less-affected-first',
  'right-first',
  'left-first',
  ...LIST_ORDERS,
] as const
export type Order = (typeof HAND_ORDERS)[number]

const order = z.enum(HAND_ORDERS, { error: 'an order such as dominant-first, right-first or shuffled' })

export const keys = z.strictObject({
  in: name,
  order: z.union([order, z.array(order).min(1).max(HAND_ORDERS.length)]).optional(),
  where: expression.optional(),
  take: z.int().min(1).max(100).optional(),
  sheet: z.boolean().optional(),
})

/** A for-each section's fields as the runner meets them. */
export interface ForEachFields {
  readonly in: string
  readonly order?: Order | readonly Order[]
  readonly where?: Expression
  /** Of a drawn list: how many are drawn each time the section is reached; the whole draw where it is left out. */
  readonly take?: number
}
