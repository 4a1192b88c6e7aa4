import { z } from 'zod'
import type { Expression } from '../../language/expressions/types.ts'
import type { From } from '../../language/model.ts'
import { expression, name, wholeOrFrom } from '../../language/schema/shapes.ts'

const MOVE_PHRASE = 'up (later in the list) or down (earlier in it)'
const move = z.enum(['up', 'down'], { error: MOVE_PHRASE })

const FINDS = ['least-accepted', 'greatest-accepted'] as const

/** Levels of a list, from `begin` on: a level that was accepted leads one way, one that failed the other. */
export const keys = z.strictObject({
  over: name,
  level: name,
  begin: name,
  accepted: expression,
  moves: z.strictObject({ accepted: move, failed: move }),
  turns: wholeOrFrom.optional(),
  finds: z.enum(FINDS, { error: 'one of least-accepted, greatest-accepted' }),
})

type Move = z.infer<typeof move>

/** A ladder's fields as the runner meets them. */
export interface LadderFields {
  readonly over: string
  readonly level: string
  readonly begin: string
  readonly accepted: Expression
  readonly moves: { readonly accepted: Move; readonly failed: Move }
  /** After how many changes of direction it is over; one where it is left out. */
  readonly turns?: From<number>
  readonly finds: (typeof FINDS)[number]
}
