/** The shape of `protocol.yaml` at its top level; steps are checked one by one by their kinds' own keys. */
import { z } from 'zod'
import { NORM_KINDS } from '../model.ts'
import { bounds, expression, name, NAME, QUANTITY, quantity, unit, words } from './shapes.ts'

/** A map of the author's own names. Names themselves are judged by the checks, with their own sentences. */
const named = <Shape extends z.ZodType>(shape: Shape) => z.record(z.string(), shape)

/** What may stand for a recorded value: an option's id or a literal such as `60 s`. */
const literal = z.union([z.string().trim().min(1).max(200), z.number()], {
  error: 'a value, such as 60 s or 3',
})

const about = z.strictObject({
  purpose: words,
  measures: z
    .array(z.string().regex(/^[bsde]\d{1,5}$/, { error: 'an ICF code, such as d440' }))
    .max(30)
    .optional(),
  minutes: bounds,
  suits: words,
  floor: words.optional(),
  ceiling: words.optional(),
  needs: z.array(name).max(30).optional(),
  'longest-gap': quantity.optional(),
})

const precaution = z.strictObject({ id: name, ask: words, why: words.optional() })

const source = z.strictObject({
  cite: words,
  seen: z.enum(['seen', 'abstract', 'memory'], { error: 'one of seen, abstract, memory' }),
  note: words.optional(),
})

const kitItem = z.strictObject({
  text: words,
  check: words.optional(),
  registered: z.boolean().optional(),
})

const condition = z.strictObject({
  'set-by': z.enum(['kit', 'clinic', 'examiner'], { error: 'one of kit, clinic, examiner' }).optional(),
  options: z.record(z.string(), words).optional(),
  values: z.array(literal).min(1).max(50).optional(),
  usual: literal.optional(),
  is: literal.optional(),
})

const listItem = z.object({ id: name }).catchall(
  z.union([z.string(), z.number(), z.boolean()], {
    error: 'a word, a number, a quantity, or yes/no as true/false',
  }),
)

const drawnList = z.strictObject({
  draw: z.record(z.string(), z.int().min(1).max(100), {
    error: 'how many of each, such as { one: 5, two: 5 }',
  }),
  'alike-in-row': z.int().min(1).max(100).optional(),
  per: name.optional(),
})

const list = z.union([z.array(listItem).min(1).max(500), drawnList], {
  error: 'a list of items, or { draw: { one: 5, two: 5 } }',
})

const raters = z.strictObject({
  count: z.int().min(1).max(10),
  unseen: z.boolean().optional(),
  later: z.boolean().optional(),
})

const BECOMES = ['go-on', 'tally', 'void', 'stop'] as const

/** Apart from the others: a literal object with a key `then` could be taken for a promise. */
const becomes = ['then', z.enum(BECOMES, { error: 'one of go-on, tally, void, stop' })] as const

const happening = z.strictObject({
  seen: words,
  do: words.optional(),
  ...Object.fromEntries([becomes]),
  key: z.string().regex(/^\S$/, { error: 'one character on the keyboard' }).optional(),
  adds: quantity.optional(),
})

const each = z.union([name, z.array(name).min(1).max(6)], {
  error: 'a loop, such as hand, or a list of loops',
})

const score = z.strictObject({
  score: name,
  title: words.optional(),
  each: each.optional(),
  value: expression,
  needs: expression.optional(),
  unit: unit.optional(),
  better: z.enum(['higher', 'lower', 'none'], { error: 'one of higher, lower, none' }).optional(),
  decimals: z.int().min(0).max(6).optional(),
  shown: z.boolean().optional(),
  range: bounds.optional(),
})

const norm = z.strictObject({
  norm: name,
  title: words.optional(),
  of: name,
  table: z.string().regex(/^norms\/[A-Za-z0-9_.-]+\.csv$/, {
    error: 'a file in the folder norms, such as norms/adults.csv',
  }),
  as: z.enum(NORM_KINDS, { error: `one of ${NORM_KINDS.join(', ')}` }),
  bands: named(words).optional(),
  unit: unit.optional(),
  gathered: named(literal).optional(),
  differs: z.enum(['withhold', 'caution'], { error: 'one of withhold, caution' }).optional(),
  population: words.optional(),
  source: name,
  gaps: z.boolean().optional(),
})

const FIGURE_PHRASE = 'a number in the score\'s unit, or "19.4 %" of the first value'
const figure = z.union([z.number(), z.string().regex(QUANTITY, { error: FIGURE_PHRASE })], {
  error: FIGURE_PHRASE,
})

export const STATISTICS = { sem: 'SEM', mdc90: 'MDC90', mdc95: 'MDC95', mcid: 'MCID' } as const

const change = z.strictObject({
  of: name,
  sem: figure.optional(),
  mdc90: figure.optional(),
  mdc95: figure.optional(),
  mcid: figure.optional(),
  population: words.optional(),
  applies: expression.optional(),
  gathered: named(literal).optional(),
  examiners: z
    .enum(['same', 'different', 'unknown'], { error: 'one of same, different, unknown' })
    .optional(),
  interval: words.optional(),
  n: z.int().min(1).max(10_000_000).optional(),
  source: name,
})

/** Void reasons that every protocol has unless its key `forbids` names them. */
export const BUILT_IN = ['timing_mistake', 'not_ready', 'interruption', 'kit_fault'] as const

export const top = z.strictObject({
  evenhand: z.number({ error: 'the number 1' }),
  id: z.string().regex(NAME, { error: 'a name: a small letter, then small letters, digits and _' }).max(60),
  version: z.string({ error: 'a version of three numbers, such as 1.0.0' }),
  language: z.string({ error: 'a language tag in quotes or plain, such as en or de-CH' }),
  title: words,
  about,
  precautions: z.array(precaution).max(100).optional(),
  accommodations: named(words).optional(),
  cautions: z.array(words).max(100).optional(),
  sources: named(source).optional(),
  kit: named(kitItem).optional(),
  conditions: named(condition).optional(),
  lists: named(list).optional(),
  raters: raters.optional(),
  happenings: named(happening).optional(),
  forbids: z.array(z.enum(BUILT_IN, { error: `one of ${BUILT_IN.join(', ')}` })).optional(),
  steps: z.array(z.unknown()).min(1).max(1000),
  scores: z.array(score).max(500).optional(),
  norms: z.array(norm).max(200).optional(),
  change: z.array(change).max(200).optional(),
})

export const wordingFile = z.strictObject({
  language: z.string({ error: 'a language tag in quotes or plain, such as en or de-CH' }),
  for: z.string(),
  texts: z.record(z.string(), words),
})
