/** What a severity promises the author of a protocol. */
export const SEVERITY_PROMISES = {
  error: 'The protocol can’t be given as it stands. A false alarm is a defect of the program.',
  warning: 'The protocol can be given, but says something that its author almost surely doesn’t mean.',
  advice: 'The protocol can be given and means what it says. Something would serve its users better.',
} as const
export type Severity = keyof typeof SEVERITY_PROMISES

/** A stretch of one file: offsets into its text, half open. Lines and columns are worked out at the edge. */
export interface Range {
  readonly file: string
  readonly start: number
  readonly end: number
}

/** A problem as a check finds it. `message` says what is wrong, `mend` what to do about it. */
export interface Problem {
  readonly code: string
  readonly severity: Severity
  readonly at: Range
  readonly message: string
  readonly mend: string
}

/** A problem as it is shown: 1-based line and column, both counted in UTF-16 units as editors do. */
export interface Diagnostic {
  readonly code: string
  readonly severity: Severity
  readonly file: string
  readonly line: number
  readonly column: number
  readonly endLine: number
  readonly endColumn: number
  readonly message: string
  readonly mend: string
}
