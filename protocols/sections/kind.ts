/**
 * What a kind of section (steps around steps) is to the rest of the domain. Each folder beside this file
 * default-exports one from its `index.ts` and is found by listing.
 */
import type { z } from 'zod'
import type { ValueType } from '../language/expressions/types.ts'
import type { Lists, Section } from '../language/model.ts'
import type { SectionChart } from '../runner/chart-parts.ts'

export interface SectionKind {
  readonly kind: string
  /** The keys that a section of this kind may have beside its name and `steps`; strict. */
  readonly keys: z.ZodObject
  readonly texts: readonly string[]
  readonly values: Readonly<Record<string, 'quantity' | 'number' | 'text'>>
  /** Keys that hold a condition (`where`, `until`): the reader parses and checks them as booleans. */
  readonly conditions: readonly string[]
  /** The name that steps inside see, and its type: a list's item, the pass number; null: none. */
  loop(section: Section, lists: Lists): { readonly name: string; readonly type: ValueType } | null
  readonly chart: SectionChart
}
