/**
 * Expressions of a protocol: CEL, with units and missing values of our own. Read `parseExpression` first, then
 * `checkExpression` against the names at the place, then `evaluate` as often as needed.
 */
export { checkExpression } from './check.ts'
export * as datum from './datum.ts'
export { evaluate } from './evaluate.ts'
export { parseExpression } from './reader.ts'
export type { Tree } from './tree.ts'
export type {
  Datum,
  Environment,
  Evaluated,
  ExpressionProblem,
  ExpressionProblemCode,
  Limits,
  Scope,
  ValueType,
} from './types.ts'
