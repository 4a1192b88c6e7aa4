/** The door to reports: an administration's result as a PDF, and as the short text for the record. */
import { pageOf } from './content.ts'
import type { ReportInput } from './input.ts'
import { pdfOf } from './typst.ts'

export type { Person, ReportInput } from './input.ts'
export { shortText } from './short-text.ts'

/**
 * An administration's report: a tagged PDF (PDF/UA-1), the same bytes for the same input on the same machine.
 * @throws Error where it can't be typeset, which is a defect of ours
 */
export function renderReport(input: ReportInput): Buffer {
  return pdfOf(pageOf(input), Math.floor(Date.parse(input.now) / 1000))
}
