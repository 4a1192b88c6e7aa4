/** A statistic without a value, as data: every statistic of this folder says why it has none, and none is ever NaN. */
export const WHYS = [
  /** Fewer observations than the statistic needs. */
  'too_few',
  /** More than the method was made for. */
  'too_many',
  /** All values are the same, so that nothing can be held against a spread. */
  'no_variance',
  /** An input is no finite number. */
  'not_finite',
  /** An input lies outside what it can be: a reliability above 1, a share of 0. */
  'out_of_range',
  /** Rows or series of unlike length. */
  'unlike_length',
  /** A denominator is zero or below: the formula has no meaning here. */
  'no_denominator',
] as const
export type Why = (typeof WHYS)[number]

export interface Undefined {
  readonly undefined: Why
}

export const because = (why: Why): Undefined => ({ undefined: why })

export const isUndefined = (answer: object): answer is Undefined => 'undefined' in answer

/** A 95 % interval; an end that isn't defined is null. */
export type Interval = readonly [number | null, number | null]
