/**
 * The static types that the checker gives every expression and column. Units are UCUM codes; `{count}` and
 * `{score}` are kept apart though UCUM would convert them. A `number` without a unit (`unit: null`) is a bare
 * number that takes the unit of the value it stands beside.
 */
export type ValueType =
  | { readonly is: 'number'; readonly unit: string | null }
  | { readonly is: 'text' }
  | { readonly is: 'bool' }
  | { readonly is: 'null' }
  | { readonly is: 'list'; readonly of: ValueType }
  /** One item of a list (`task`), one loop pass (`hand`) or one row: properties by name. */
  | { readonly is: 'record'; readonly fields: Readonly<Record<string, ValueType>> }
  /** A score that has more `each` than the place: values by the id of that loop (`rate[dominant]`). */
  | { readonly is: 'map'; readonly by: string; readonly of: ValueType }

/** An expression that has been parsed and checked; evaluation needs nothing else than a scope. */
export interface Expression {
  readonly source: string
  /** The parser's tree; only `protocols/language/expressions` looks inside. */
  readonly tree: unknown
  readonly type: ValueType
  /** Names that the expression reads, such as `run`, `hand`, `fill`: used by reach and order checks. */
  readonly reads: readonly string[]
}

/**
 * A number as a formula meets it. `over` marks a bound: the true value is at least this ("over 60 s").
 * Units are static and so not carried; `null` is "no value", never zero.
 */
export interface Num {
  readonly n: number
  readonly over: boolean
}

/** A value as the evaluator meets it. */
export type Value =
  | null
  | boolean
  | string
  | Num
  | readonly Value[]
  | { readonly record: Readonly<Record<string, Value>> }
