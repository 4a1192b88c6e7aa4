/**
 * The door to reports: an administration's result as a PDF, and as the short text for the record; and a protocol as a
 * script and a form to give it on paper.
 */
import { pageOf } from './content.ts'
import type { FormInput } from './form/form-input.ts'
import { formPage } from './form/form-page.ts'
import type { ReportInput } from './input.ts'
import { type Pdf, pdfOf } from './typst.ts'

export type { Person, ReportInput } from './input.ts'
export { shortText } from './short-text.ts'

const seconds = (now: string): number => Math.floor(Date.parse(now) / 1000)

/**
 * An administration's report: a tagged PDF (PDF/UA-1), the same bytes for the same input on the same machine.
 * @throws Error where it can't be typeset, which is a defect of ours
 */
export function renderReport(input: ReportInput): Buffer {
  return pdfOf(pageOf(input), seconds(input.now)).bytes
}

/**
 * A protocol as a readable script and a blank paper form: a tagged PDF (PDF/UA-1), the same bytes for the same input
 * on the same machine. Its words are the protocol's own.
 * @throws Error where it can't be typeset, which is a defect of ours
 */
export function renderForm(input: FormInput): Pdf {
  return pdfOf(formPage(input), seconds(input.now))
}
