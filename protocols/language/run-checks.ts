/** Runs every check of the folder `checks` on a draft. */
import type { Check, CheckContext } from './check.ts'
import type { Draft } from './convert/draft.ts'
import { declaredNames } from './convert/names.ts'
import type { WordingFile } from './convert/wordings.ts'
import type { Problem, Range } from './diagnostics.ts'

/** All checks, by code. */
export const CHECKS: ReadonlyMap<string, Check> = new Map(
  Object.values(import.meta.glob<Check>('./checks/*.ts', { eager: true, import: 'default' })).map((check) => [
    check.code,
    check,
  ]),
)

/** Problems that the checks find; a check whose needs are broken waits until they are mended. */
export function runChecks(
  draft: Draft,
  wordings: readonly WordingFile[],
  checks: Iterable<Check> = CHECKS.values(),
): readonly Problem[] {
  const context: CheckContext = { draft, names: declaredNames(draft.tree), wordings }
  return [...checks].flatMap((check) => (draft.isBrokenIn(...check.needs) ? [] : problemsOf(check, context)))
}

/** A check that breaks down is itself reported: a partial list never passes for the whole. */
function problemsOf(check: Check, context: CheckContext): readonly Problem[] {
  const { code, severity } = check
  try {
    return [...check.run(context)].map((finding) => ({ code, severity, ...finding }))
  } catch (error) {
    const { file, start } = context.draft.tree.at
    return [crashed(`The check ${code}`, error, { file, start, end: start })]
  }
}

/** What breaks down is told like any other problem, and no protocol comes of the file. */
export function crashed(what: string, error: unknown, at: Range): Problem {
  return {
    code: 'check_crashed',
    severity: 'error',
    at,
    message: `${what} broke down (${error instanceof Error ? error.message : String(error)}), so this file is not fully checked.`,
    mend: 'This is a fault of the program, not of the file: report it with the file.',
  }
}
