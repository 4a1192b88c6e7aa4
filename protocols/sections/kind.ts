/**
 * What a kind of section (steps around steps) is to the rest of the domain. Each folder beside this file
 * default-exports one from its `index.ts` and is found by listing.
 */
import type { z } from 'zod'
import type { Wanted } from '../language/convert/draft.ts'
import type { Expression, ValueType } from '../language/expressions/types.ts'
import type { From, Item, Lists, Outcome, Protocol, Section } from '../language/model.ts'
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
  /**
   * Paths in `keys` to what is another expression (`begin.from`), judged from around the section, with what it has to
   * give: an `Expression` in the fields. Left out: none.
   */
  readonly formulas?: Readonly<Record<string, Wanted>>
  /** The name that steps inside see, and its type: a list's item, the pass number; null: none. */
  loop(section: Section, lists: Lists): { readonly name: string; readonly type: ValueType } | null
  /** Where its passes stand in a place; null for a section without passes. */
  passes(section: Section, draws: Protocol['draws']): Passes | null
  /** The table that a section of this kind has itself, such as the level that a ladder finds; null: none. */
  readonly found: Found | null
  /** How its passes come; null for a section without passes, which leaves no trace in a place. */
  readonly chart: SectionChart | null
  /**
   * How its passes come where it is given on one page: `free`, all known beforehand and in any order; `ordered`, by an
   * order that is recorded before the page begins, so it can be the page, but not stand on one. Null where this section
   * can't be on a page, since its passes show only while they are given; left out: none of the kind can.
   */
  onSheet?(section: Section, draws: Protocol['draws']): 'free' | 'ordered' | null
  /**
   * How many passes there can be at the most, for those who set aside room for each beforehand, such as on paper: null
   * for one of each item of its list. `count` works out the most that a value of the section can come to. Left out: null.
   */
  most?(
    section: Section,
    draws: Protocol['draws'],
    count: (from: From<number>) => number | null,
  ): number | null
  /** Which of its cases is given; null where all of its steps are. */
  readonly chooses: ((moment: SectionMoment) => Choice) | null
}

/** The loop that a section is. */
export interface Passes {
  /** Key of a place under which the pass stands, and the name that steps inside see. */
  readonly loop: string
  /** The list it goes through; null where it counts. */
  readonly list: string | null
  /**
   * True where an item may come more than once: then the number of the pass stands in the place too, under
   * `<loop>_turn`.
   */
  readonly numbered: boolean
}

/** A pass that was given, and what the section's condition says of it now. */
export interface GivenPass {
  readonly item: string
  readonly verdict: boolean | null
  /** That of the trials in it: done, or the first that is something else. */
  readonly outcome: Outcome
}

/** The row that a section has once it was gone through. */
export interface FoundRow {
  /** The item found, whose properties are the row's columns; null: none. */
  readonly item: string | null
  readonly outcome: Outcome
  /** True where the item is only a bound: what was looked for lies beyond it. */
  readonly over: boolean
}

export interface Found {
  /** The columns beside `outcome`. */
  columns(section: Section, lists: Lists): Readonly<Record<string, ValueType>>
  /** Key of `conditions` that each pass is judged by. */
  readonly judgedBy: string
  /**
   * `count` works out a whole number of the section's fields as it stands there; `holds` judges one of its conditions
   * as seen from an item.
   */
  row(
    section: Section,
    items: readonly Item[],
    given: readonly GivenPass[],
    asked: {
      count(from: From<number>): number | null
      holds(condition: Expression, item: string): boolean | null
    },
  ): FoundRow
}
