import { judgeUnit } from '../units.ts'
import type { Complain } from './formula.ts'
import type { Typed } from './units-of-types.ts'

/** The second of two arguments as a UCUM code written as text; null after complaining. */
export function checkUnitArgument(args: readonly Typed[], complain: Complain, use: string): string | null {
  const unit = args[1]
  if (unit === undefined || args.length !== 2)
    return complain('wrong_arguments', 'This takes a value and a unit.', `Write ${use}.`)
  if (unit.term.is !== 'constant' || unit.term.datum.is !== 'text')
    return complain(
      'wrong_arguments',
      'The unit is a text written here, so that it is known beforehand.',
      `Write ${use}.`,
      unit,
    )
  const code = unit.term.datum.text
  const { valid, suggestions } = judgeUnit(code)
  if (valid) return code
  const [meant] = suggestions
  const mend = meant === undefined ? 'Write a UCUM code such as s, kgf or {count}.' : `Write '${meant}'.`
  return complain('unit_unknown', `'${code}' is not a UCUM unit.`, mend, unit)
}
