/**
 * Evaluating a checked expression. Missing values are strict: whatever is worked out from one is missing for the
 * same reason, except that `&&` and `||` are decided by the side that decides them. Division by zero is missing
 * too. Every value remembers the trials it rests on.
 */
import { scaled } from '../../decimal.ts'
import { list, none, plain, restingOn, trialsOf, valuesIn } from './datum.ts'
import { FORMULAS } from './formulas.ts'
import { evaluateMacro } from './macros.ts'
import {
  arithmetic,
  comparison,
  converted,
  field,
  index,
  logic,
  mapBool,
  membership,
  negated,
  present,
} from './operations.ts'
import type { Term } from './term.ts'
import type { Datum, Evaluated, Expression, Limits, Scope } from './types.ts'

/** Far above what any test needs, far below what anybody would wait for. */
const ENOUGH: Limits = { steps: 100_000 }

class TooLong extends Error {}

/** The state of one evaluation: the names in sight and the steps that are left. */
interface Run {
  readonly scope: Scope
  readonly locals: ReadonlyMap<string, Datum>
  readonly left: { steps: number }
}

/** Evaluates an expression at a place. It never throws for what a protocol or a trial can hold. */
export function evaluate(expression: Expression, scope: Scope, limits: Limits = ENOUGH): Evaluated {
  const datum = evaluateDatum(expression, scope, limits)
  const missing = datum.is === 'none' ? datum.missing : null
  return { value: plain(datum), missing, trials: trialsOf(datum) }
}

/** As `evaluate`, for a caller that hands the value on to other expressions. */
export function evaluateDatum(expression: Expression, scope: Scope, limits: Limits = ENOUGH): Datum {
  try {
    // Only `checkExpression` makes expressions, and it puts a term there.
    return run(expression.tree as Term, { scope, locals: new Map(), left: { steps: limits.steps } })
  } catch (error) {
    if (error instanceof TooLong) return none('too_long', { steps: limits.steps })
    throw error
  }
}

function run(term: Term, at: Run): Datum {
  at.left.steps -= 1
  if (at.left.steps < 0) throw new TooLong()
  switch (term.is) {
    case 'constant':
      return term.datum
    case 'name':
      return (
        (term.local ? at.locals.get(term.name) : at.scope.read(term.name)) ??
        none('unknown', { name: term.name })
      )
    case 'field':
      return field(run(term.of, at), term.name)
    case 'index':
      return index(run(term.of, at), run(term.key, at))
    case 'convert':
      return converted(run(term.of, at), (n) => scaled(n, term.by))
    case 'call':
      return call(term.formula, term.args, at)
    case 'macro':
      return evaluateMacro(term, run(term.of, at), (body, item) =>
        run(body, { ...at, locals: new Map([...at.locals, [term.name, item]]) }),
      )
    case 'list':
      return list(term.items.map((item) => run(item, at)))
    case 'map':
      return { is: 'map', entries: new Map(term.entries.map(([key, value]) => [key, run(value, at)])) }
    case 'if':
      return choose(term, at)
    case 'and':
    case 'or':
      return logic(term.is === 'or', run(term.left, at), () => run(term.right, at))
    case 'not':
      return mapBool(run(term.of, at), (value) => !value)
    case 'minus':
      return negated(run(term.of, at))
    case 'arithmetic':
      return arithmetic(term.operator, run(term.left, at), run(term.right, at))
    case 'compare':
      return comparison(term.operator, run(term.left, at), run(term.right, at))
    case 'in':
      return membership(run(term.item, at), run(term.of, at))
    case 'present':
      return present(run(term.of, at))
  }
}

function call(name: string, args: readonly Term[], at: Run): Datum {
  const data = args.map((arg) => run(arg, at))
  for (const datum of data) at.left.steps -= valuesIn(datum).length
  if (at.left.steps < 0) throw new TooLong()
  return FORMULAS.get(name)?.apply(data) ?? none('unknown', { name })
}

function choose(term: Extract<Term, { is: 'if' }>, at: Run): Datum {
  const test = run(term.test, at)
  if (test.is !== 'bool') return test
  return restingOn(run(test.bool ? term.yes : term.no, at), test.trials)
}
