/** What operators do with values: missing ones strict, bounds passed on by sums alone, no division by zero. */
import { compare } from './bounds.ts'
import { bool, list, none, number, restingOn, trialsOf } from './datum.ts'
import { missingAmong } from './formula.ts'
import type { ArithmeticOperator, Comparison } from './term.ts'
import type { Datum, Trials } from './types.ts'

export function field(of: Datum, name: string): Datum {
  if (of.is !== 'record') return of.is === 'none' ? of : none('unknown', { name })
  return (Object.hasOwn(of.fields, name) ? of.fields[name] : undefined) ?? none('no_property', { name })
}

export function index(of: Datum, key: Datum): Datum {
  if (of.is === 'none' || key.is === 'none') return of.is === 'none' ? of : key
  if (of.is === 'map' && key.is === 'text')
    return restingOn(of.entries.get(key.text) ?? none('no_rows', { id: key.text }), key.trials)
  if (of.is === 'list' && key.is === 'number' && !key.over) {
    const item = Number.isInteger(key.n) ? of.items[key.n] : undefined
    return restingOn(item ?? none('no_such_row', { row: key.n }), key.trials)
  }
  return none('no_such_key')
}

export function converted(datum: Datum, by: (n: number) => number): Datum {
  switch (datum.is) {
    case 'number':
      return number(by(datum.n), datum.over, datum.trials)
    case 'list':
      return list(datum.items.map((item) => converted(item, by)))
    case 'map':
      return {
        is: 'map',
        entries: new Map([...datum.entries].map(([key, value]) => [key, converted(value, by)])),
      }
    default:
      return datum
  }
}

/** `decides`: the value that settles it whatever the other side is: true for `||`, false for `&&`. */
export function logic(decides: boolean, left: Datum, other: () => Datum): Datum {
  if (left.is === 'bool' && left.bool === decides) return left
  const right = other()
  if (right.is === 'bool' && right.bool === decides) return right
  const missing = missingAmong([left, right])
  return missing === null ? bool(!decides, trialsOf(left, right)) : restingOn(missing, trialsOf(left, right))
}

export const mapBool = (datum: Datum, change: (value: boolean) => boolean): Datum =>
  datum.is === 'bool' ? bool(change(datum.bool), datum.trials) : datum

export function negated(datum: Datum): Datum {
  if (datum.is !== 'number') return datum
  return datum.over ? none('bound', {}, datum.trials) : number(-datum.n, false, datum.trials)
}

/** A sum with a bound is a bound; what else is worked out from one isn't known. */
export function arithmetic(operator: ArithmeticOperator, left: Datum, right: Datum): Datum {
  const trials = trialsOf(left, right)
  const missing = missingAmong([left, right])
  if (missing !== null) return restingOn(missing, trials)
  if (left.is !== 'number' || right.is !== 'number') return none('not_a_number', {}, trials)
  const over = left.over || right.over
  if (operator === '+') return number(left.n + right.n, over, trials)
  if (over) return none('bound', {}, trials)
  return calculated(operator, left.n, right.n, trials)
}

function calculated(operator: '-' | '*' | '/' | '%', a: number, b: number, trials: Trials): Datum {
  if (operator === '-') return number(a - b, false, trials)
  if (operator === '*') return number(a * b, false, trials)
  if (b === 0) return none('divided_by_zero', {}, trials)
  return number(operator === '/' ? a / b : a % b, false, trials)
}

export function comparison(operator: Comparison, left: Datum, right: Datum): Datum {
  const trials = trialsOf(left, right)
  const missing = missingAmong([left, right])
  if (missing !== null) return restingOn(missing, trials)
  if (left.is === 'number' && right.is === 'number') return compare(operator, left, right, trials)
  const same =
    (left.is === 'text' && right.is === 'text' && left.text === right.text) ||
    (left.is === 'bool' && right.is === 'bool' && left.bool === right.bool)
  return bool(operator === '==' ? same : !same, trials)
}

/** True with one equal item; missing where no item is equal but one can't be told. */
export function membership(item: Datum, of: Datum): Datum {
  const missing = missingAmong([item, of])
  if (missing !== null) return restingOn(missing, trialsOf(item, of))
  if (of.is === 'map') return bool(item.is === 'text' && of.entries.has(item.text), trialsOf(item))
  if (of.is !== 'list') return none('unknown')
  return of.items.reduce<Datum>(
    (found, one) => logic(true, found, () => comparison('==', item, one)),
    bool(false, trialsOf(item)),
  )
}

export function present(datum: Datum): Datum {
  return bool(datum.is !== 'none', datum.is === 'none' ? datum.trials : trialsOf(datum))
}
