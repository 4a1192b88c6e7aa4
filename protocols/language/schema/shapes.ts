/**
 * The shapes of values that every part of a protocol file is made of, for the schemas of the top level and of
 * the kinds of steps and sections. The `error` of a shape says, in a phrase that follows "expected", what
 * belongs there: the reader puts it into the sentence that the author sees.
 */
import { z } from 'zod'

z.config({ jitless: true })

/** What a name looks like; names are unique and no CEL reserved word (see the checks on names). */
export const NAME = /^[a-z][a-z0-9_]*$/

/** A value with its UCUM unit as written: `60 s`, `0.7 cm`, `1 [lb_av]`. */
export const QUANTITY = /^(?=.{1,80}$)([+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?)\s*(\S+)$/

const NAME_PHRASE = 'a name: a small letter, then small letters, digits and _'

export const name = z.string({ error: NAME_PHRASE }).max(60).regex(NAME, { error: NAME_PHRASE })

/** Words that somebody reads or says; ICU MessageFormat. */
export const words = z.string().trim().min(1).max(4000)

/** A CEL expression; a bare number or a yes/no is one too. */
export const expression = z.union([z.string().trim().min(1).max(2000), z.number(), z.boolean()], {
  error: 'an expression, such as "mean(run.time)"',
})

/** `{ from: CEL }`, which stands for any value. */
export const from = z.strictObject({ from: expression })

/** Words, or an expression that picks them from a list's item. */
export const text = z.union([words, from], { error: 'words, or { from: expression }' })

const QUANTITY_PHRASE = 'a number with its unit, such as 60 s'
const FROM_PHRASE = `${QUANTITY_PHRASE}, or { from: expression }`

/** A number, or a number with a unit. */
export const quantity = z.union([z.number(), z.string().regex(QUANTITY, { error: QUANTITY_PHRASE })], {
  error: QUANTITY_PHRASE,
})

export const quantityOrFrom = z.union(
  [z.number(), z.string().regex(QUANTITY, { error: FROM_PHRASE }), from],
  { error: FROM_PHRASE },
)

/** A whole number from 0. */
export const whole = z.int().min(0).max(1_000_000)

export const wholeOrFrom = z.union([whole, from], { error: 'a whole number, or { from: expression }' })

/** A UCUM code; whether it is one is told by the check `unit_not_ucum`. */
export const unit = z.string({ error: 'a unit of UCUM, such as s, kgf or "{count}"' }).trim().min(1).max(60)

/** Lowest and highest value, both included. */
export const bounds = z.tuple([z.number(), z.number()])
