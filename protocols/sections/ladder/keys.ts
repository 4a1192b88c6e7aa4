import { z } from 'zod'
import type { Expression } from '../../language/expressions/types.ts'
import type { From } from '../../language/model.ts'
import { expression, from, name, wholeOrFrom } from '../../language/schema/shapes.ts'

const MOVE_PHRASE = 'up (later in the list) or down (earlier in it)'
const move = z.enum(['up', 'down'], { error: MOVE_PHRASE })

const FINDS = ['least-accepted', 'greatest-accepted'] as const

const BEGIN_PHRASE = 'the id of a level, or { from: expression }'

/**
 * Levels of a list, without those that `where` leaves out, from `begin` on: a level that was accepted leads one way,
 * one that failed the other.
 */
export const keys = z.strictObject({
  over: name,
  level: name,
  where: expression.optional(),
  begin: z.union([name, from], { error: BEGIN_PHRASE }),
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
  /** Which levels of the list there are, seen from each; all where it is left out. */
  readonly where?: Expression
  readonly begin: string | { readonly from: Expression }
  readonly accepted: Expression
  readonly moves: { readonly accepted: Move; readonly failed: Move }
  /** After how many changes of direction it is over; one where it is left out. */
  readonly turns?: From<number>
  readonly finds: (typeof FINDS)[number]
}
