/**
 * What a kind of section (steps around steps) is to the rest of the domain. Each folder beside this file
 * default-exports one from its `index.ts` and is found by listing.
 */
import type { z } from 'zod'
import type { ValueType } from '../language/expressions/types.ts'
import type { Lists, Section } from '../language/model.ts'
import type { Choice, SectionChart, SectionMoment } from '../runner/chart-parts.ts'

export interface SectionKind {
  readonly kind: string
  /**
   * The keys that a section of this kind may have beside its name, as written; strict. `steps` is one of them
   * unless `chooses` is given: then `cases` and `otherwise` hold the steps.
   */
  readonly keys: z.ZodObject
  readonly texts: readonly string[]
  /**
   * Keys that hold a value or `{ from }`: a `From<Quantity>` or `From<number>` in the section's fields. A path
   * such as `times.least` names a key of a map.
   */
  readonly values: Readonly<Record<string, 'time' | 'number'>>
  /** Keys that hold a condition (`where`, `until`): an `Expression` in the fields, checked as a boolean. */
  readonly conditions: readonly string[]
  /** The name that steps inside see, and its type: a list's item, the pass number; null: none. */
  loop(section: Section, lists: Lists): { readonly name: string; readonly type: ValueType } | null
  /** How its passes come; null for a section without passes, which leaves no trace in a place. */
  readonly chart: SectionChart | null
  /** Which of its cases is given; null where all of its steps are. */
  readonly chooses: ((moment: SectionMoment) => Choice) | null
}
