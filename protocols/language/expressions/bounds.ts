/** How numbers that are bounds ("at least 60 s") take part in formulas and comparisons. */
import { bool, none, number } from './datum.ts'
import type { Comparison } from './term.ts'
import type { Datum, Trials } from './types.ts'

interface Bound {
  readonly n: number
  readonly over: boolean
}

/**
 * A formula that never falls when one of its numbers rises (min, max, sum, mean, median). The true values may be
 * anything from the bounds upward, so the result lies between the formula of the bounds and that of values
 * without limit: where both agree the bounds didn't matter, else the result is itself a bound.
 */
export function rising(
  values: readonly Bound[],
  trials: Trials,
  formula: (xs: readonly number[]) => number,
): Datum {
  const least = formula(values.map(({ n }) => n))
  if (!values.some(({ over }) => over)) return number(least, false, trials)
  const most = formula(values.map(({ n, over }) => (over ? Number.POSITIVE_INFINITY : n)))
  return number(least, most !== least, trials)
}

/** A comparison of two numbers; missing with the reason `bound` where a bound leaves it open. */
export function compare(operator: Comparison, a: Bound, b: Bound, trials: Trials): Datum {
  const verdict = decide(operator, a, b)
  return verdict === null ? none('bound', {}, trials) : bool(verdict, trials)
}

function decide(operator: Comparison, a: Bound, b: Bound): boolean | null {
  switch (operator) {
    case '<':
      return below(a, b)
    case '>':
      return below(b, a)
    case '<=':
      return not(below(b, a))
    case '>=':
      return not(below(a, b))
    case '==':
      return equal(a, b)
    case '!=':
      return not(equal(a, b))
  }
}

const not = (verdict: boolean | null): boolean | null => (verdict === null ? null : !verdict)

/** a < b, where a bound may be its number or anything above it. */
function below(a: Bound, b: Bound): boolean | null {
  if (!a.over && a.n < b.n) return true
  if (!b.over && a.n >= b.n) return false
  return a.over || b.over ? null : a.n < b.n
}

function equal(a: Bound, b: Bound): boolean | null {
  if (!a.over && !b.over) return a.n === b.n
  if (!a.over && a.n < b.n) return false
  return !b.over && b.n < a.n ? false : null
}
