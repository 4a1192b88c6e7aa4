/** The kinds of steps and sections there are, found by listing their folders, and the schema of each. */
import { z } from 'zod'
import type { SectionKind } from '../../sections/kind.ts'
import type { StepKind } from '../../steps/kind.ts'
import { CLOSINGS } from '../model.ts'
import { expression, from, name, QUANTITY, text, whole } from './shapes.ts'

const byKind = <Kind extends { readonly kind: string }>(found: Readonly<Record<string, Kind>>) =>
  new Map(Object.values(found).map((kind) => [kind.kind, kind]))

export const STEP_KINDS: ReadonlyMap<string, StepKind> = byKind(
  import.meta.glob<StepKind>('../../steps/*/index.ts', { eager: true, import: 'default' }),
)
export const SECTION_KINDS: ReadonlyMap<string, SectionKind> = byKind(
  import.meta.glob<SectionKind>('../../sections/*/index.ts', { eager: true, import: 'default' }),
)

/** Outcomes that can count as a value; the others have one of their own or none by their nature. */
const COUNTABLE = ['limit', ...CLOSINGS, 'stopped', 'skipped'] as const

const OVER = /^over\s+/
const COUNTS_AS_PHRASE = 'a quantity such as 60 s, a bound such as over 60 s, or { from: expression }'
const countsAsValue = z.union(
  [
    z.number(),
    z.string().refine((written) => QUANTITY.test(written.replace(OVER, '')), { error: COUNTS_AS_PHRASE }),
    from,
  ],
  { error: COUNTS_AS_PHRASE },
)

/** Keys that a step of any kind may have. */
export const COMMON = z.strictObject({
  text: text.optional(),
  figure: name.optional(),
  of: name.optional(),
  practice: z.boolean().optional(),
  voids: whole.max(100).optional(),
  'counts-as': z
    .union([z.partialRecord(z.enum(COUNTABLE), countsAsValue), countsAsValue], {
      error: 'a map from outcomes to values, such as { unable: 0 kgf }',
    })
    .optional(),
  'may-say': z.array(text).max(50).optional(),
})

const rule = z.strictObject({
  rule: name,
  when: expression,
  end: name.optional(),
  credit: z.record(z.string(), z.number()).optional(),
  confirm: text.optional(),
  note: text.optional(),
})

const schemas = new Map<string, z.ZodObject>([['rule', rule]])
for (const { kind, keys } of STEP_KINDS.values()) {
  schemas.set(kind, z.strictObject({ [kind]: name, ...COMMON.shape, ...keys.shape }))
}
const inner = { steps: z.array(z.unknown()).min(1).max(1000) }
for (const { kind, keys, chooses } of SECTION_KINDS.values()) {
  schemas.set(kind, z.strictObject({ [kind]: name, ...keys.shape, ...(chooses === null && inner) }))
}

/** The schema of whatever may stand among `steps`, by its first key. */
export const NODE_SCHEMAS: ReadonlyMap<string, z.ZodObject> = schemas

/** Every key that some kind of step, section or rule may have. */
export const NODE_KEYS: ReadonlySet<string> = new Set(
  [...schemas.values()].flatMap((schema) => Object.keys(schema.shape)).filter((key) => !schemas.has(key)),
)
