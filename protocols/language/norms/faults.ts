import type { Draft } from '../convert/draft.ts'
import type { Range } from '../diagnostics.ts'
import type { TableFault } from './table.ts'

type FaultOf<Code extends TableFault['is']> = Extract<TableFault, { is: Code }> & { readonly file: string }

/**
 * Faults of one kind in the tables of all norms, each once; what concerns no place in a table is at the norm
 * that names it.
 */
export function* tableFaults<Code extends TableFault['is']>(
  draft: Draft,
  code: Code,
): Iterable<{ readonly at: Range; readonly fault: FaultOf<Code> }> {
  const told = new Set<string>()
  for (const norm of draft.norms) {
    const table = draft.normTable(norm)
    for (const fault of table.faults) {
      if (fault.is !== code) continue
      const at = fault.at ?? draft.at(norm, 'table')
      const place = `${at.file} ${at.start}`
      if (told.has(place)) continue
      told.add(place)
      // The code tells which of the faults this is.
      yield { at, fault: { ...fault, file: table.file } as FaultOf<Code> }
    }
  }
}
