/**
 * The static types that the checker gives every expression and column. Units are UCUM codes; `{count}` and
 * `{score}` are kept apart though UCUM would convert them. A `number` without a unit (`unit: null`) is a bare
 * number that takes the unit of the value it stands beside. Any value may be missing: types don't say so.
 */
export type ValueType =
  | { readonly is: 'number'; readonly unit: string | null }
  /** `oneOf`: the only texts it can be, such as outcomes or a condition's options. */
  | { readonly is: 'text'; readonly oneOf?: readonly string[] }
  | { readonly is: 'bool' }
  | { readonly is: 'null' }
  | { readonly is: 'list'; readonly of: ValueType }
  /** One item of a list (`task`), one loop pass (`hand`) or one row: properties by name. */
  | { readonly is: 'record'; readonly fields: Readonly<Record<string, ValueType>> }
  /** A score that has more `each` than the place: values by the id of that loop (`rate[dominant]`). */
  | {
      readonly is: 'map'
      readonly by: string
      readonly of: ValueType
      /** The only ids it can have. */
      readonly keys?: readonly string[]
    }

/** An expression that has been parsed and checked; evaluation needs nothing else than a scope. */
export interface Expression {
  readonly source: string
  /** The checked tree, units converted; only `protocols/language/expressions` looks inside. */
  readonly tree: unknown
  readonly type: ValueType
  /** Names that the expression reads, such as `run`, `hand`, `fill`: used by reach and order checks. */
  readonly reads: readonly string[]
}

/** What is wrong with an expression, with its stretch of the source (UTF-16 offsets, half open). */
export interface ExpressionProblem {
  readonly code: ExpressionProblemCode
  readonly start: number
  readonly end: number
  readonly message: string
  readonly mend: string
}
export type ExpressionProblemCode =
  | 'syntax'
  | 'too_large'
  | 'not_supported'
  | 'unknown_name'
  | 'unknown_field'
  | 'unknown_function'
  | 'wrong_arguments'
  | 'wrong_type'
  | 'unit_unknown'
  | 'unit_mismatch'
  | 'never_equal'

/** The names that an expression may use at its place, with their types. */
export type Environment = Readonly<Record<string, ValueType>>

/**
 * Why there is no value: the outcome of the trial that has none (`refused`), or what else stood in the way
 * (`no_rows`, `divided_by_zero`, `bound`, …), with what a sentence about it needs.
 */
export interface Missing {
  readonly code: string
  readonly detail: Readonly<Record<string, string | number>>
}

/**
 * A number as a formula meets it. `over` marks a bound: the true value is at least this ("over 60 s").
 * Units are static and so not carried; `null` is "no value", never zero.
 */
interface Num {
  readonly n: number
  readonly over: boolean
}

/** A value as an evaluation gives it back. */
export type Value =
  | null
  | boolean
  | string
  | Num
  | readonly Value[]
  | { readonly record: Readonly<Record<string, Value>> }

/** What evaluating gave: a null value always says why, and every value says which trials it rests on. */
export interface Evaluated {
  readonly value: Value
  readonly missing: Missing | null
  /** Ids of trials, each once. */
  readonly trials: readonly string[]
}

/** A value inside an evaluation: it keeps the trials it rests on and, where there is none, the reason. */
export type Datum =
  | { readonly is: 'number'; readonly n: number; readonly over: boolean; readonly trials: Trials }
  | { readonly is: 'text'; readonly text: string; readonly trials: Trials }
  | { readonly is: 'bool'; readonly bool: boolean; readonly trials: Trials }
  | { readonly is: 'none'; readonly missing: Missing; readonly trials: Trials }
  | { readonly is: 'list'; readonly items: readonly Datum[] }
  | { readonly is: 'record'; readonly fields: Readonly<Record<string, Datum>> }
  | { readonly is: 'map'; readonly entries: ReadonlyMap<string, Datum> }
export type Trials = readonly string[]

/** The values of the names at a place; asked only for names that the expression reads. */
export interface Scope {
  read(name: string): Datum | null
}

/** How much an evaluation may do before it is stopped with the reason `too_long`. */
export interface Limits {
  readonly steps: number
}
