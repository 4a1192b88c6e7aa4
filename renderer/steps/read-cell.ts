import { isWithin, type Range } from '../../protocols/runner/plausible.ts'
import { readNumber } from '../parts/read-number.ts'
import { say } from '../words/index.ts'
import type { CellRead, EventData } from './face.ts'

const WIDEST = { least: -1_000_000, most: 1_000_000 }

/** A number typed in a cell; one that is hardly plausible is doubted before it is sent. */
export function readCell(
  typed: string,
  { isWhole, plausible }: { readonly isWhole: boolean; readonly plausible: Range | null },
  data: (value: number, confirmed: boolean) => EventData,
): CellRead {
  const read = readNumber(typed, { ...WIDEST, isWhole })
  if ('problem' in read) return { problem: say(`parts.number.${read.problem}`, { ...WIDEST, least: 0 }) }
  const { number } = read
  if (number === null) return { problem: say('steps.entry.empty') }
  return {
    data: (confirmed) => data(number, confirmed),
    doubt: plausible !== null && !isWithin(number, plausible) ? plausible : null,
  }
}
