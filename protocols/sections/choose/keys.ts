import { z } from 'zod'
import type { Expression } from '../../language/expressions/types.ts'
import { expression } from '../../language/schema/shapes.ts'

const aCase = z.strictObject(
  { when: expression, steps: z.array(z.unknown()).min(1).max(1000) },
  { error: 'a case, such as { when: "hand.turn == 1", steps: […] }' },
)

/** The first case whose condition holds is given; `otherwise` is where none does, nothing where it is left out. */
export const keys = z.strictObject({
  cases: z.array(aCase).min(1).max(50),
  otherwise: z.array(z.unknown()).max(1000).optional(),
})

/** A choose section's fields as the runner meets them; each case is a section of its own inside. */
export interface ChooseFields {
  readonly cases: readonly { readonly when: Expression; readonly name: string }[]
  readonly otherwise: string | null
}
