/**
 * The checked protocol: what reading a folder without errors gives, and all that the runner, the scoring, the
 * rehearsal and the screens know of a test. It is never stored; the text it came from is.
 */
import type { Range } from './diagnostics.ts'
import type { Expression } from './expressions/types.ts'

/** A value with its UCUM unit, as written (`60 s`, `0.7 cm`). A bare number has unit `1`. */
export interface Quantity {
  readonly value: number
  readonly unit: string
}

/** A value that the file fixes, or an expression that gives it in the place where it stands. */
export type From<T> = { readonly is: T } | { readonly from: Expression }

/** A text by its key; the words are in `Protocol.words`. `from` picks a text of a list item. */
export type Text = { readonly key: string } | { readonly from: Expression }

/** The outcomes of a trial: what can stand in a row's `outcome` column. */
export const OUTCOMES = [
  'done',
  'limit',
  'unable',
  'refused',
  'not_allowed',
  'absent',
  'not_given',
  'stopped',
  'skipped',
  'credited',
  /** Of a rater who rates another day: still to come. */
  'pending',
] as const
export type Outcome = (typeof OUTCOMES)[number]

/** The outcomes by which an examiner closes a trial, item or hand without a result: none of them a zero. */
export const CLOSINGS = ['unable', 'refused', 'not_allowed', 'absent', 'not_given'] as const
export type Closing = (typeof CLOSINGS)[number]

/** What an outcome other than done counts as: a value, or a bound ("over 60 s"). */
export interface CountsAs {
  readonly value: From<Quantity>
  readonly over: boolean
}

export type Node = Step | Section | Rule

interface Common {
  readonly name: string
  readonly at: Range
}

/** One thing the protocol asks for. `fields` are the kind's own, checked by the kind's schema. */
export interface Step extends Common {
  readonly node: 'step'
  readonly kind: string
  readonly fields: Readonly<Record<string, unknown>>
  readonly text: Text | null
  readonly figure: string | null
  /** Name of the step whose trial this is a further reading of. */
  readonly of: string | null
  readonly practice: boolean
  /** How often void trials here may be made good, over all passes of a repeat around it; null: as often as needed. */
  readonly voids: number | null
  readonly countsAs: Readonly<Partial<Record<Outcome, CountsAs>>>
  /** What may be said during this step. */
  readonly maySay: readonly Text[]
}

/** Steps around steps; `kind` is the folder in `protocols/sections`. */
export interface Section extends Common {
  readonly node: 'section'
  readonly kind: string
  readonly fields: Readonly<Record<string, unknown>>
  readonly steps: readonly Node[]
}

/** A rule judged where it stands. With a null condition it does nothing, and says so. */
export interface Rule extends Common {
  readonly node: 'rule'
  readonly when: Expression
  /** A section around it, or `test`; null: it only notes. */
  readonly end: string | null
  /** Step name to the reading that what is cut off is credited with. */
  readonly credit: Readonly<Record<string, number>>
  readonly confirm: Text | null
  readonly note: Text | null
}

/** A list's item: `id` and the author's own properties; a quantity keeps its unit. */
export interface Item {
  readonly id: string
  readonly properties: Readonly<Record<string, string | number | boolean | Quantity>>
}

/** `hands`, and any list the file declares. */
export type Lists = Readonly<Record<string, readonly Item[]>>

/** A list that is drawn anew: its items are the kinds that it is drawn of. */
export interface Draw {
  /** How often each item is in one draw, by its id. */
  readonly counts: Readonly<Record<string, number>>
  /** At most so many alike in a row; null: no limit. */
  readonly alikeInRow: number | null
  /** The loop that has a bag of its own for each pass, where only some are taken at a time; null: one bag. */
  readonly per: string | null
}

/** Those who rate: the list `raters` has one item for each. */
export interface Raters {
  readonly count: number
  /** True where nobody who rates sees what another has given. */
  readonly unseen: boolean
  /** True where one of them may rate another day, such as from a recording. */
  readonly later: boolean
}

/** What may differ between kits and clinics. */
export interface Condition {
  readonly name: string
  readonly setBy: 'file' | 'kit' | 'clinic' | 'examiner'
  /** Option ids, each with a text key; or literal values such as `60 s`; one value when `file` fixes it. */
  readonly options: readonly ConditionOption[]
  readonly usual: string | null
  readonly at: Range
}
export interface ConditionOption {
  /** What is recorded: an option's id, or a literal as written (`60 s`). */
  readonly id: string
  readonly text: Text | null
  readonly value: string | Quantity
}

export interface Happening {
  readonly name: string
  readonly seen: Text
  readonly do: Text | null
  readonly becomes: 'go-on' | 'tally' | 'void' | 'stop'
  readonly key: string | null
  readonly adds: Quantity | null
  /** True for the four reasons every protocol has unless it forbids one. */
  readonly builtIn: boolean
}

/** Something to ask before the first trial; the answer is recorded, the decision stays with the examiner. */
export interface Precaution {
  readonly id: string
  readonly ask: Text
  readonly why: Text | null
}

export interface KitItem {
  readonly id: string
  readonly text: Text
  /** What to look at before use. */
  readonly check: Text | null
  /** True when clinics register the piece: own name, build, unit, checks. */
  readonly registered: boolean
}

/** Where a figure or fact comes from, and whether it was seen in print or is from memory. */
export interface Source {
  readonly id: string
  readonly cite: string
  readonly seen: 'seen' | 'memory' | 'abstract'
  readonly note: string
}

export interface Score {
  readonly name: string
  readonly title: Text
  readonly each: readonly string[]
  readonly value: Expression
  readonly needs: Expression | null
  readonly unit: string
  readonly better: 'higher' | 'lower' | 'none'
  readonly decimals: number
  readonly shown: boolean
  readonly range: readonly [number, number] | null
  readonly at: Range
}

/** How each condition stood where norms or change figures were gathered. */
export type Gathered = Readonly<Record<string, string>>

/** What the rows of a norm table state, each with columns of its own. */
export const NORM_KINDS = ['mean-sd', 'percentiles', 'lms', 'cut-offs', 'bands'] as const
export type NormKind = (typeof NORM_KINDS)[number]

/** Properties of a client that a column of a norm table can be named as, beside sex, age and hand. */
export const CLIENT_COLUMNS = ['schooling', 'affected_side', 'arm'] as const

/**
 * A column by which a row is chosen: named as a loop (the item's id or the number of the pass), a condition (what
 * was recorded), a step (its first reading here, such as the answer to an `ask`), or a property of the client:
 * `schooling` in years, `affected_side` (right, left, both, neither), `arm` (affected, less_affected or unaffected,
 * of the arm that the score is of).
 */
export interface NormColumn {
  readonly column: string
  readonly by: 'loop' | 'condition' | 'step' | 'client'
}

/** What a choosing column must hold: a word as recorded, or a number within a range, both ends included. */
export type NormCell =
  | { readonly is: 'word'; readonly word: string }
  | { readonly is: 'range'; readonly from: number | null; readonly to: number | null }

export interface NormRow {
  readonly sex: 'F' | 'M' | 'any'
  /** Completed years, both ends included; null: open. */
  readonly ageMin: number | null
  readonly ageMax: number | null
  readonly hand: 'right' | 'left' | 'dominant' | 'nondominant' | 'any'
  /** By choosing column; one that fits anything (an empty cell) is left out. */
  readonly chosenBy: Readonly<Record<string, NormCell>>
  readonly n: number | null
  /** Of `mean-sd`. */
  readonly mean: number | null
  readonly sd: number | null
  /** Of `percentiles`: ranks above 0 and below 100, rising, counted from the lowest value up; else empty. */
  readonly percentiles: readonly { readonly rank: number; readonly value: number }[]
  /** Of `lms`: power, median (above 0), coefficient of variation (above 0). */
  readonly lms: { readonly l: number; readonly m: number; readonly s: number } | null
  /** Of `cut-offs`: the bands on both sides of a value, and to which of them the value itself belongs. */
  readonly cutOff: {
    readonly value: number
    readonly below: string
    readonly above: string
    readonly equal: 'below' | 'above'
  } | null
  /** Of `bands`, of which a stratum has several: from this value on and below that one; null: open. */
  readonly band: { readonly id: string; readonly from: number | null; readonly below: number | null } | null
  readonly provenance: 'seen' | 'memory'
  readonly line: number
}

export interface Norm {
  readonly name: string
  readonly title: Text
  readonly of: string
  readonly as: NormKind
  readonly unit: string
  readonly rows: readonly NormRow[]
  /** The table's choosing columns beside sex, age and hand. */
  readonly columns: readonly NormColumn[]
  /** Words of `cut-offs` and `bands`, by the ids that the table uses. */
  readonly bands: Readonly<Record<string, Text>>
  readonly file: string
  readonly gathered: Gathered
  /** What becomes of the comparison where a condition differs or is unknown. */
  readonly differs: 'withhold' | 'caution'
  readonly population: Text
  readonly source: string
  readonly at: Range
}

export interface ChangeFigure {
  readonly of: string
  readonly statistic: 'SEM' | 'MDC90' | 'MDC95' | 'MCID'
  readonly value: number
  /** The score's own unit, or `%` of the first value. */
  readonly unit: string
  readonly population: Text
  readonly applies: Expression | null
  readonly gathered: Gathered
  readonly examiners: 'same' | 'different' | 'unknown'
  readonly interval: string
  readonly n: number | null
  readonly source: string
  readonly at: Range
}

export interface About {
  readonly purpose: Text
  /** ICF codes. */
  readonly measures: readonly string[]
  readonly minutes: readonly [number, number]
  readonly suits: Text
  readonly floor: Text | null
  readonly ceiling: Text | null
  readonly needs: readonly string[]
  /** The longest gap, in minutes, after which going on needs a decision. */
  readonly longestGapMinutes: number
}

export interface Wording {
  /** `null` for the protocol's own words, else the wording file's name. */
  readonly file: string | null
  readonly language: string
  readonly texts: Readonly<Record<string, string>>
}

export interface Protocol {
  readonly evenhand: 1
  readonly id: string
  readonly version: string
  readonly language: string
  readonly title: Text
  readonly about: About
  readonly precautions: readonly Precaution[]
  readonly sources: readonly Source[]
  readonly kit: readonly KitItem[]
  readonly conditions: readonly Condition[]
  readonly lists: Lists
  /** How the lists that are drawn are drawn, by their name. */
  readonly draws: Readonly<Record<string, Draw>>
  readonly raters: Raters | null
  readonly happenings: readonly Happening[]
  /** What the protocol allows to differ for a client's sake without touching what is measured. */
  readonly accommodations: readonly { readonly id: string; readonly text: Text }[]
  readonly steps: readonly Node[]
  readonly scores: readonly Score[]
  readonly norms: readonly Norm[]
  readonly change: readonly ChangeFigure[]
  /** Cautions and notes that every report of this test prints. */
  readonly cautions: readonly Text[]
  readonly words: readonly Wording[]
  /** Texts of `figures/*.svg` by name without ending. */
  readonly figures: Readonly<Record<string, string>>
}
