/**
 * What a function of the language is to the checker and the evaluator. Each file in `functions/` default-exports
 * one and is found by listing.
 */
import { broughtTo, commonType, describe, type Typed, described } from './units-of-types.ts'
import { none, trialsOf, valuesIn } from './datum.ts'
import type { Term } from './term.ts'
import type { Datum, ExpressionProblemCode, Trials, ValueType } from './types.ts'

/** How a formula's check says what is wrong; it gives null so that a check can end with it. */
export type Complain = (
  code: ExpressionProblemCode,
  message: string,
  mend: string,
  at?: { readonly start: number; readonly end: number },
) => null

export interface Formula {
  readonly name: string
  /** How it is written, as a mend shows it. */
  readonly use: string
  /** True where it is written after its first argument: `'abc'.contains('b')`. */
  readonly asMethod?: true
  /** The type of the result and the arguments as the evaluator shall see them, or null after complaining. */
  check(
    args: readonly Typed[],
    complain: Complain,
  ): { readonly type: ValueType; readonly args: readonly Term[] } | null
  /** Works on arguments of the checked types, of which any may be missing. */
  apply(args: readonly Datum[]): Datum
}

/** A number among the rows: what it is and whether it is a bound. */
export interface Reading {
  readonly n: number
  readonly over: boolean
}

type NumberList = { readonly type: ValueType & { readonly is: 'number' }; readonly args: readonly Term[] }

const innermost = (type: ValueType): ValueType => (type.is === 'map' ? innermost(type.of) : type)

/** What a list or map holds, maps within maps opened; null for a single value. */
export function heldBy(type: ValueType): ValueType | null {
  if (type.is === 'list') return type.of
  return type.is === 'map' ? innermost(type.of) : null
}

/** One list or map of numbers. */
export function oneList(args: readonly Typed[], complain: Complain, use: string): NumberList | null {
  const [values] = args
  if (values === undefined || args.length !== 1)
    return complain('wrong_arguments', `This takes one list, not ${args.length} values.`, `Write ${use}.`)
  const held = heldBy(values.type)
  if (held === null || held.is !== 'number')
    return complain(
      'wrong_type',
      `This takes a list of numbers, not ${describe(values.type)}.`,
      `Write ${use}.`,
      values,
    )
  return { type: held, args: [values.term] }
}

/** One list or map of numbers, or two and more numbers. */
export function listOrNumbers(args: readonly Typed[], complain: Complain, use: string): NumberList | null {
  if (args.length < 2) return oneList(args, complain, use)
  const type = commonType(args.map((arg) => arg.type))
  if (type === null || type.is !== 'number')
    return complain('wrong_type', 'Several values here must all be numbers.', `Write ${use}.`)
  const terms: Term[] = []
  for (const arg of args) {
    const term = arg.type.is === 'number' ? broughtTo(arg.term, arg.type, type) : null
    if (term === null)
      return complain(
        'unit_mismatch',
        `${described(arg.type)} doesn't go with ${describe(type)}.`,
        'Use values of one kind.',
        arg,
      )
    terms.push(term)
  }
  return { type, args: [{ is: 'list', items: terms }] }
}

/**
 * A formula over numbers. Missing rows are strict: the first of them is the reason that there is no result; so
 * is a list without rows.
 */
export function overNumbers(work: (readings: readonly Reading[], trials: Trials) => Datum) {
  return (args: readonly Datum[]): Datum => {
    const [values] = args
    if (values === undefined || values.is === 'none') return values ?? none('no_rows')
    const items = valuesIn(values)
    const missing = items.find((item) => item.is === 'none')
    const trials = trialsOf(...items)
    if (missing?.is === 'none') return none(missing.missing.code, missing.missing.detail, trials)
    const readings = items.filter((item) => item.is === 'number')
    return readings.length === 0 ? none('no_rows') : work(readings, trials)
  }
}

/** The first of the arguments that is missing. */
export const missingAmong = (args: readonly Datum[]): Datum | null =>
  args.find((arg) => arg.is === 'none') ?? null
