import type { SalvageReport } from '../records/index.ts'
import { say } from './words.ts'

/** What became of a damaged file, a line each: for a terminal. */
export function salvageLines({ setAside, kept, lost, altered, of }: SalvageReport): string[] {
  return [
    say('salvage.done', { setAside, kept, lost, altered }),
    ...of.map(({ kind, id, title }) => say('salvage.of', { kind, id, title: title || 'none' })),
  ]
}
