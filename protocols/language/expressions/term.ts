/** A checked expression: names resolved, units converted, nothing left to find wrong but missing values. */
import type { Rational } from '../../decimal.ts'
import type { Operator } from './tree.ts'
import type { Datum } from './types.ts'

export const MACROS = ['filter', 'map', 'all', 'exists', 'exists_one'] as const
export type Macro = (typeof MACROS)[number]

export type ArithmeticOperator = Extract<Operator, '+' | '-' | '*' | '/' | '%'>
export type Comparison = Extract<Operator, '==' | '!=' | '<' | '<=' | '>' | '>='>

export type Term =
  | { readonly is: 'constant'; readonly datum: Datum }
  /** `local`: bound by a macro around it, else read from the scope. */
  | { readonly is: 'name'; readonly name: string; readonly local: boolean }
  | { readonly is: 'field'; readonly of: Term; readonly name: string }
  | { readonly is: 'index'; readonly of: Term; readonly key: Term }
  | { readonly is: 'convert'; readonly of: Term; readonly by: Rational }
  | { readonly is: 'call'; readonly formula: string; readonly args: readonly Term[] }
  | {
      readonly is: 'macro'
      readonly macro: Macro
      readonly name: string
      readonly of: Term
      /** What an item must meet to be mapped; only `map` may have it. */
      readonly where: Term | null
      readonly body: Term
    }
  | { readonly is: 'list'; readonly items: readonly Term[] }
  | { readonly is: 'map'; readonly entries: readonly (readonly [string, Term])[] }
  | { readonly is: 'if'; readonly test: Term; readonly yes: Term; readonly no: Term }
  | { readonly is: 'and' | 'or'; readonly left: Term; readonly right: Term }
  | { readonly is: 'not' | 'minus'; readonly of: Term }
  | {
      readonly is: 'arithmetic'
      readonly operator: ArithmeticOperator
      readonly left: Term
      readonly right: Term
    }
  | { readonly is: 'compare'; readonly operator: Comparison; readonly left: Term; readonly right: Term }
  | { readonly is: 'in'; readonly item: Term; readonly of: Term }
  /** Whether there is a value: `has(x.y)` and `x != null`. */
  | { readonly is: 'present'; readonly of: Term }
