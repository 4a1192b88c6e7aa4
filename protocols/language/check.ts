/** What a check is. Each file in `checks/` default-exports one and is found by listing the folder. */
import type { Draft } from './convert/draft.ts'
import type { Declared } from './convert/names.ts'
import type { WordingFile } from './convert/wordings.ts'
import type { Range, Severity } from './diagnostics.ts'

/** A problem as a check finds it; its code and severity are the check's. */
interface Finding {
  readonly at: Range
  readonly message: string
  readonly mend: string
}

/** What a check looks at: the pieces that could be made of the file, and where they stand. */
export interface CheckContext {
  readonly draft: Draft
  /** Every name that the file declares, also of broken pieces. */
  readonly names: readonly Declared[]
  readonly wordings: readonly WordingFile[]
}

export interface Check {
  /** The file's own name. */
  readonly code: string
  readonly severity: Severity
  /** Top-level keys that must be free of errors for the check to be meaningful. */
  readonly needs: readonly string[]
  run(context: CheckContext): Iterable<Finding>
}
