/**
 * Expressions of a protocol: CEL, with units and missing values of our own. Read `parseExpression` first, then
 * `checkExpression` against the names at the place, then `evaluate` as often as needed.
 */
export { checkExpression, type Checked } from './check.ts'
export * as datum from './datum.ts'
export { evaluate, evaluateDatum } from './evaluate.ts'
export { type Parsed, parseExpression } from './reader.ts'
export type { Tree } from './tree.ts'
export type {
  Datum,
  Environment,
  Evaluated,
  Expression,
  ExpressionProblem,
  ExpressionProblemCode,
  Limits,
  Missing,
  Num,
  Scope,
  Value,
  ValueType,
} from './types.ts'
