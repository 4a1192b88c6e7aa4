/** The report of an administration as other programs read it back from the PDF. */
import { execFileSync } from 'node:child_process'
import type { Desk } from './desk.ts'

/** All its text, with single spaces. */
export async function printed({ client }: Desk, id: string): Promise<string> {
  const { pdfBase64 } = await client.call('administrations.report', { store: 'records', id })
  const text = execFileSync('pdftotext', ['-', '-'], {
    input: Buffer.from(pdfBase64, 'base64'),
    encoding: 'utf8',
  })
  return text.replace(/\s+/g, ' ')
}
