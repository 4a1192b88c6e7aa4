import { none } from '../datum.ts'
import type { Formula } from '../formula.ts'
import { checkUnitArgument } from '../unit-argument.ts'
import { broughtTo, describe, described } from '../units-of-types.ts'
import type { ValueType } from '../types.ts'

/** The same value in another unit: `in_unit(x, 'kgf')`. */
const inUnit: Formula = {
  name: 'in_unit',
  use: "in_unit(squeeze.reading, 'kgf')",
  check(args, complain) {
    const unit = checkUnitArgument(args, complain, inUnit.use)
    const [value] = args
    if (unit === null || value === undefined) return null
    const type = retyped(value.type, unit)
    if (type === null)
      return complain(
        'wrong_type',
        `in_unit takes numbers with a unit, not ${describe(value.type)}.`,
        "A bare number gets a unit by quantity(2, 'min').",
        value,
      )
    const term = broughtTo(value.term, value.type, type)
    if (term === null)
      return complain(
        'unit_mismatch',
        `${described(value.type)} can't be given in ${unit}: they measure different things.`,
        'Name a unit of the same kind.',
        value,
      )
    return { type, args: [term] }
  },
  apply: ([value]) => value ?? none('no_rows'),
}

/** The type with its numbers in another unit; null where there are none, or bare ones. */
function retyped(type: ValueType, unit: string): ValueType | null {
  if (type.is === 'number') return type.unit === null ? null : { is: 'number', unit }
  if (type.is !== 'list' && type.is !== 'map') return null
  const of = retyped(type.of, unit)
  return of === null ? null : { ...type, of }
}
export default inUnit
