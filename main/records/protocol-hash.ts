import { createHash } from 'node:crypto'
import { canonicalText } from './canonical.ts'

export const textHash = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex')

/**
 * A protocol's content hash: SHA-256, in hex, of the RFC 8785 text of one object with a member for each file,
 * its path within the protocol's folder to its text.
 */
export function protocolHash(files: ReadonlyMap<string, string>): string {
  return textHash(canonicalText(Object.fromEntries(files)))
}
