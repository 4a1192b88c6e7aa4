/** What the parts of the checker share: the names in sight, the problems found, and how one is reported. */
import { nearest } from './nearest.ts'
import type { Tree } from './tree.ts'
import type { Environment, ExpressionProblem, ExpressionProblemCode, ValueType } from './types.ts'
import type { Typed } from './units-of-types.ts'

export interface Checking {
  readonly environment: Environment
  /** Names bound by macros around, innermost last. */
  readonly locals: readonly (readonly [string, ValueType])[]
  readonly problems: ExpressionProblem[]
  readonly reads: Set<string>
  /** Checks a part; null when problems were found in it. */
  check(tree: Tree, locals?: Checking['locals']): Typed | null
}

export function complain(
  checking: Checking,
  at: { readonly start: number; readonly end: number },
  code: ExpressionProblemCode,
  message: string,
  mend: string,
): null {
  checking.problems.push({ code, start: at.start, end: at.end, message, mend })
  return null
}

/** A mend that names what was most likely meant, else lists what there is. */
export function meant(name: string, among: readonly string[], nothing: string): string {
  const near = nearest(name, among)
  if (near !== null) return `Write ${near}, if that is meant.`
  return among.length === 0 ? nothing : `There is: ${[...among].sort().join(', ')}.`
}
