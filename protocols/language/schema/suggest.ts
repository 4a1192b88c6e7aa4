import { nearest } from '../expressions/nearest.ts'

/** A phrase for the end of a mend: the word that may be meant, or all that there are. */
export function offer(written: string, known: readonly string[], what: string): string {
  const meant = nearest(written, known)
  if (meant) return `Did you mean "${meant}"?`
  if (known.length === 0) return `The file declares no ${what}.`
  return `There ${known.length === 1 ? 'is' : 'are'}: ${[...known].sort().slice(0, 20).join(', ')}.`
}
