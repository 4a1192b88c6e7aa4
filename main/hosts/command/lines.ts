import type { Diagnostic } from '../../../protocols/language/diagnostics.ts'
import { say } from '../words.ts'

/** A diagnostic as editors and people read it: file, line and column first, the mend under it. */
export const lineOf = ({ file, line, column, severity, code, message, mend }: Diagnostic): string =>
  `${file}:${line}:${column}: ${say(`severity.${severity}`)} ${code}: ${message}\n    ${mend}`
